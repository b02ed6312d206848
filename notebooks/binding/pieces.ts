import { JSDOM } from "jsdom";
import type { ChartSheet } from "../../src/ui/chart-sheet.ts";
import { SCREEN_THEME } from "../../src/ui/chart-theme.ts";
import { drawing } from "../../src/ui/drawing.ts";
import { demoShop } from "./demo.ts";
import type { Demo } from "./demo.ts";

/** A picture of a notebook, with its heading and what it shows for those who do not see it. */
export interface Picture { readonly name: string; readonly description: string; readonly svg: Element }

/** What a notebook says, in order: headings, paragraphs and tables in Markdown, and pictures. */
export type Piece = string | Picture;

/** One question, answered from the demo shop and from published data by the code of the app. */
export type Notebook = (demo: Demo) => Promise<readonly Piece[]>;

const { document } = new JSDOM().window;

/** What the charts of the rooms draw on, without a browser. */
export const BOARD: ChartSheet = { width: 720, theme: SCREEN_THEME, document, locale: "en-GB" };

/**
 * A picture made ready for a page.
 *
 * @throws {RangeError} when nothing was drawn
 */
export function picture(name: string, description: string, made: SVGElement | HTMLElement | null): Picture {
  const svg = drawing(made);
  if (svg === null) throw new RangeError(`picture: needs a drawing for “${name}”`);
  return { name, description, svg };
}

/** Lines of one paragraph, list or table, or several. */
export const text = (...lines: readonly string[]): string => lines.join("\n");

/**
 * A table in Markdown; a heading that ends with a colon stands over figures and is set to the right.
 *
 * @example
 * table(["part", "failed:"], [["seal", "3"]]); // => "| part | failed |\n| --- | ---: |\n| seal | 3 |"
 */
export const table = (headings: readonly string[], rows: readonly (readonly string[])[]): string => text(
  `| ${headings.map((heading) => heading.replace(/:$/, "")).join(" | ")} |`, `| ${headings.map((heading) => (heading.endsWith(":") ? "---:" : "---")).join(" | ")} |`,
  ...rows.map((row) => `| ${row.join(" | ")} |`));

/** The end of every notebook: whose method, whose data. */
export const sources = (...lines: readonly string[]): string => text("## Sources", "", ...lines.map((line) => `- ${line}`), "- The demo shop and everybody in it are invented; `data/README.md` says how.");

/** A notebook as it is read in a terminal, pictures by their names. */
export const asText = (pieces: readonly Piece[]): string =>
  pieces.map((piece) => (typeof piece === "string" ? piece : `[Picture: ${piece.name}. ${piece.description}]`)).join("\n\n");

/** Runs one notebook and writes it to standard output; `npm run notebooks` makes the pages with the pictures. */
export async function told(notebook: Notebook): Promise<number> {
  const demo = demoShop();
  try {
    process.stdout.write(`${asText(await notebook(demo))}\n`);
    return 0;
  } finally {
    await demo.close();
  }
}
