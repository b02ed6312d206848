/**
 * A drawing made ready for the page: the page's policy refuses inline style sheets, so those that Plot writes are taken
 * out before the drawing is shown (`plot.css` holds the same rules), and what it calls itself is left to the frame around it.
 */
export function drawing<E extends SVGElement | HTMLElement>(made: E | null): E | null {
  if (made === null) return null;
  for (const sheet of made.querySelectorAll("style")) sheet.remove();
  for (const svg of [made, ...made.querySelectorAll("svg")]) svg.setAttribute("aria-hidden", "true");
  return made;
}
