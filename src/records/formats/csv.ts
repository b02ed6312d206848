import Papa from "papaparse";
import type { ParseLocalConfig, ParseStepResult } from "papaparse";
import type { SheetRow, TextShape } from "./sheet.ts";
import { LIMITS, Unreadable } from "./unreadable.ts";

export type CsvRow = Omit<SheetRow, "typed">;

export interface CsvShape extends Pick<TextShape, "delimiter" | "newline"> {
  /** A sign that no text holds, for files in which a quotation mark is an ordinary sign; else the quotation mark. */
  readonly quoteChar?: string;
}

type Parser = { parse(text: string, base_index: number, ignore_last_row: boolean): { meta: { cursor: number }; errors: { code?: string; index?: number }[] } };
// The package exports its plain parser, but its types do not know what it takes.
const PlainParser = Papa.Parser as unknown as new (config: object) => Parser;

const CHUNK_CHARS = 512 * 1024;

/** How many line ends stand in `text` from `start` to before `end`. */
function lineEnds(text: string, newline: string, start: number, end: number): number {
  let count = 0;
  for (let at = text.indexOf(newline, start); at !== -1 && at < end; at = text.indexOf(newline, at + 1)) count += 1;
  return count;
}

/** Cells of a row read with `\n` as line end keep the `\r` of a `\r\n` in the last one. */
function withoutReturn(cells: string[]): string[] {
  const last = cells.length - 1, text = cells[last];
  if (text?.endsWith("\r")) cells[last] = text.slice(0, -1);
  return cells;
}

interface Piece {
  readonly rows: SheetRow[];
  /** Characters of the text that are dealt with, and the lines in them. */
  readonly used: number;
  readonly lines: number;
}

/** Rows of one piece of text; of an unfinished piece the last row is left for the next. */
function piece(text: string, shape: CsvShape, line: number, finished: boolean): Piece {
  const rows: SheetRow[] = [];
  let start = 0, next = line;
  const step = ({ data, errors, meta }: ParseStepResult<string[]>) => {
    const row = (data as unknown as string[][])[0] ?? [], end = meta.cursor;
    const unclosed = errors.find(({ code }) => code === "MissingQuotes");
    if (unclosed) {
      const at = next + lineEnds(text, shape.newline, start, unclosed.index ?? start);
      throw new Unreadable(`The quotation mark opened in line ${at} is never closed, so the rows after it cannot be told apart.`);
    }
    if (end === start) return;
    const lines = lineEnds(text, shape.newline, start, end);
    rows.push({ line: next, cells: withoutReturn(row), lines, stray_quote: errors.length > 0, typed: null });
    start = end;
    next += lines;
  };
  const config: Partial<ParseLocalConfig<string[], never>> = { ...shape, step };
  new PlainParser(config).parse(text, 0, !finished);
  return { rows, used: start, lines: next - line };
}

/**
 * The rows of a CSV text in pieces of some thousand, each with its true line number.
 *
 * Cells are as RFC 4180 section 2 says: quoted cells may hold the delimiter, line ends and doubled quotation marks.
 *
 * @throws {Unreadable} when a quotation mark is never closed, or one row is longer than the limit
 */
export async function* csvRows(text: AsyncIterable<string>, shape: CsvShape): AsyncGenerator<SheetRow[]> {
  let waiting = "", wanted = CHUNK_CHARS, line = 1;
  for await (const part of text) {
    waiting += part;
    if (waiting.length < wanted) continue;
    const { rows, used, lines } = piece(waiting, shape, line, false);
    waiting = waiting.slice(used);
    line += lines;
    // A row longer than a piece is parsed again from its start, so each try must be worth its while.
    wanted = Math.max(CHUNK_CHARS, 2 * waiting.length);
    if (waiting.length > LIMITS.row_chars) throw new Unreadable(`The row that starts in line ${line} never ends; is a quotation mark not closed?`);
    if (rows.length > 0) yield rows;
  }
  if (waiting === "") return;
  // With a last line end, blanks behind a closing quotation mark are read the same on the last line as on any other.
  const { rows } = piece(waiting.endsWith(shape.newline) ? waiting : waiting + shape.newline, shape, line, true);
  if (rows.length > 0) yield rows;
}

/** A title may stand above the headings. */
const LOOKED_AT = 20;

/** The first rows that are not blank, read with one delimiter; for guessing. */
function firstRows(head: string, shape: CsvShape): string[][] {
  const found: string[][] = [];
  const step = ({ data }: ParseStepResult<string[]>) => {
    const row = withoutReturn((data as unknown as string[][])[0] ?? []);
    if (found.length < LOOKED_AT && row.some((cell) => cell.trim() !== "")) found.push(row);
  };
  new PlainParser({ ...shape, preview: 50, step }).parse(head, 0, false);
  return found;
}

/**
 * True when quotation marks quote nothing: typed lists have them alone in their cells, for “the same as above”.
 *
 * @param head first characters of the text
 */
export function quotesNothing(head: string, { delimiter }: CsvShape): boolean {
  const cells = head.split(/\r?\n|\r/).flatMap((line) => line.split(delimiter)), quoting = cells.filter((cell) => cell.startsWith('"'));
  return delimiter === "\t" && quoting.length > 0 && quoting.every((cell) => cell === '"');
}

/** The first line of a file may name its delimiter in a way spreadsheets know: `sep=;`. */
export const DELIMITER_LINE = /^"?sep=([,;\t|])"?\r?(\n|$)/i;

/**
 * Delimiter and line end of a CSV text, by its first characters: the delimiter that splits one of the first rows into most
 * known headings, then the first into most cells.
 */
export function shapeOf(head: string, isKnown: (heading: string) => boolean): CsvShape {
  const bare = head.replace(/"[^"]*"/g, "");
  const newline = bare.includes("\n") || !bare.includes("\r") ? "\n" : "\r";
  const named = DELIMITER_LINE.exec(head)?.[1];
  if (named) return { delimiter: named, newline };
  const scored = [",", ";", "\t", "|"].map((delimiter) => {
    const rows = firstRows(head, { delimiter, newline }), known = Math.max(0, ...rows.map((cells) => cells.filter(isKnown).length));
    return { delimiter, score: known * LIMITS.columns + (rows[0]?.length ?? 0) };
  });
  const best = scored.reduce((a, b) => (b.score > a.score ? b : a));
  return { delimiter: best.delimiter, newline };
}
