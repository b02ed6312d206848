/** How a table takes the width there is: as it is, with words that break over lines, without its spare columns too, or moved sideways. */
export type Fit = "whole" | "broken" | "fewer" | "sideways";

/** Tries the ways in turn on the box around a table; `data-fit` says to the style sheet which one stands. */
export function fitted(box: HTMLElement, ways: readonly Fit[] = ["whole", "broken"]): Fit {
  for (const fit of ways) {
    box.dataset["fit"] = fit;
    if (box.scrollWidth <= box.clientWidth + 1) return fit;
  }
  box.dataset["fit"] = "sideways";
  return "sideways";
}

/** Fits the table in `box` now and whenever its room changes; returns the way to stop. */
export function keepFitted(box: HTMLElement, told: (fit: Fit) => void, ways?: readonly Fit[]): () => void {
  const watch = new ResizeObserver(() => told(fitted(box, ways)));
  watch.observe(box);
  return () => watch.disconnect();
}
