import { PAPER_THEME } from "../../src/ui/chart-theme.ts";
import type { ChartSheet } from "../../src/ui/chart-sheet.ts";

/** A sheet of `width` pixels in the light colours, in British English. */
export const sheet = (width: number): ChartSheet => ({ width, theme: PAPER_THEME, document, locale: "en-GB" });

/** A drawing as a file of its own that a reviewer can open: with our type and paper, one element a line. */
export function standAlone(svg: Element): string {
  const copy = svg.cloneNode(true) as Element;
  copy.querySelector("style")?.remove();
  copy.setAttribute("font-family", "'Source Serif 4', Georgia, serif");
  copy.setAttribute("font-size", String(PAPER_THEME.font_size));
  const paper = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [name, value] of Object.entries({ width: "100%", height: "100%", fill: PAPER_THEME.paper })) paper.setAttribute(name, value);
  copy.prepend(paper);
  return `${new XMLSerializer().serializeToString(copy).replaceAll("><", ">\n<")}\n`;
}

/** The words of a drawing's group of class `name`, in the order drawn. */
export const words = (svg: Element, name: string): string[] =>
  [...svg.querySelectorAll(`g.${name} text`)].map((text) => text.textContent ?? "");

/** How many marks of `tag` the groups of class `name` hold. */
export const marks = (svg: Element, name: string, tag: string): number => svg.querySelectorAll(`g.${name} ${tag}`).length;

/** The drawing, which must be there. */
export function drawn(made: Element | null): Element {
  if (made === null) throw new Error("Nothing was drawn.");
  return made;
}
