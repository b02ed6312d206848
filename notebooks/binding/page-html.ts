import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { JSDOM } from "jsdom";
import { Marked } from "marked";
import type { Picture, Piece } from "./pieces.ts";

/** The page may ask nothing of anybody: what it needs stands in it. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";
const SHELL = `<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}"><title></title><style></style></head><body><main></main></body></html>`;
const STYLES = ["../../src/ui/theme.css", "../../src/ui/plot.css", "../../src/ui/print.css", "page.css"];

/** The app's own colours and print rules; its typeface would have to be fetched, so the next in its list is taken. */
const style = (): string => STYLES.map((file) => readFileSync(resolve(import.meta.dirname, file), "utf8")).join("\n").replace(/@import [^;]+;/g, "");

/** Markdown whose HTML stays words, and that neither loads a picture nor leads away from the page. */
function markdown(document: Document): Marked {
  const plain = (words: string) => { const place = document.createElement("span"); place.textContent = words; return place.innerHTML; };
  return new Marked({ gfm: true, async: false, renderer: { html: ({ text }) => plain(text), image: ({ text }) => plain(text), link: ({ text }) => plain(text) } });
}

function figure({ name, description, svg }: Picture, document: Document): HTMLElement {
  const made = document.createElement("figure"), caption = document.createElement("figcaption"), title = document.createElement("strong"), chart = document.createElement("div");
  title.textContent = name;
  caption.append(title, description);
  chart.className = "chart";
  chart.setAttribute("role", "img");
  chart.setAttribute("aria-label", `${name}. ${description}`);
  chart.append(document.importNode(svg, true));
  made.append(caption, chart);
  return made;
}

/** Links of ours at the head of a page or in the list of contents: file and words. */
export type Way = readonly [file: string, words: string];

function links(ways: readonly Way[], tag: "nav" | "ol", document: Document): HTMLElement {
  const list = document.createElement(tag);
  for (const [file, words] of ways) {
    const link = document.createElement("a"), place = tag === "ol" ? document.createElement("li") : list;
    link.href = file;
    link.textContent = words;
    place.append(link);
    if (place !== list) list.append(place);
  }
  return list;
}

/** A whole page that stands alone: light and dark as the reader's screen is, on paper black on white. */
export function pageHtml(title: string, pieces: readonly Piece[], ways: { readonly before?: readonly Way[]; readonly after?: readonly Way[] } = {}): string {
  const page = new JSDOM(SHELL), { document } = page.window, main = document.querySelector("main") as HTMLElement, marked = markdown(document);
  document.title = title;
  (document.querySelector("style") as HTMLStyleElement).textContent = style();
  if (ways.before) main.append(links(ways.before, "nav", document));
  for (const piece of pieces) {
    if (typeof piece === "string") main.insertAdjacentHTML("beforeend", marked.parse(piece) as string);
    else main.append(figure(piece, document));
  }
  if (ways.after) main.append(links(ways.after, "ol", document));
  return `${page.serialize()}\n`;
}
