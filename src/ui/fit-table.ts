/** How a table takes the width there is: as it is, with words that break over lines, or moved sideways. */
export type Fit = "whole" | "broken" | "sideways";

/** Tries the ways in turn on the box around a table; `data-fit` says to the style sheet which one stands. */
export function fitted(box: HTMLElement): Fit {
  for (const fit of ["whole", "broken"] as const) {
    box.dataset["fit"] = fit;
    if (box.scrollWidth <= box.clientWidth + 1) return fit;
  }
  box.dataset["fit"] = "sideways";
  return "sideways";
}

/** Fits the table in `box` now and whenever its room changes; returns the way to stop. */
export function keepFitted(box: HTMLElement, told: (fit: Fit) => void): () => void {
  const watch = new ResizeObserver(() => told(fitted(box)));
  watch.observe(box);
  return () => watch.disconnect();
}
