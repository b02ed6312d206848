import fc from "fast-check";
import { TABLES } from "../../src/records/columns.ts";
import type { Column } from "../../src/records/columns.ts";
import { sheetData, xlsx } from "../records/formats/making-workbooks.ts";
import { mostlyGood, sheetKinds } from "./any-sheet.ts";

/**
 * How many files the properties read. `SALTBENCH_FUZZ=10000 npx vitest run --project unit tests/fuzz/every-line-ends.test.ts
 * tests/fuzz/importing-twice.test.ts` reads some ten thousand in each, in two and in ten minutes of a quiet core.
 */
export const fuzzRuns = (few: number): number => Number(process.env["SALTBENCH_FUZZ"] ?? few);

/** A file as some shop might have it, with the number of its records as its writer counts them. */
export interface AnyFile {
  readonly name: string;
  readonly content: BlobPart;
  /** Rows under the heading row and above it, blank ones too where the format has them. */
  readonly rows: number;
}

/** Rows of cells before they are written in some format; `heading` is the place of the heading row. */
export interface Cells {
  readonly rows: readonly (readonly string[])[];
  readonly heading: number;
}

const BY_KIND: Readonly<Record<Column["kind"], readonly string[]>> = {
  text: ["A", "Withy 5", "withy5", "Eldmere", "=1+1", "O'Brien, \"Bo\"", "two\nlines", "<b>x</b>", "", "P-1", "é½"], date: ["2026-03-01", "2026-03-02", "2026-03-14", "14/03/2026", "soon", ""],
  number: ["1", "55", "7.5", "0,5", "lots", "-1", ""], whole: ["1", "2", "3", "0", "many", ""], yes_no: ["yes", "no", "", "x", "perhaps"], money: ["12.50", "3", "", "£3", "EUR 4", "free"],
  one_of: [], position: ["rotor", "ar_clutch", "line roller", "ring", ""], mode: ["worn", "corroded", "", "blue"],
};
const OF_COLUMN: Readonly<Record<string, readonly string[]>> = {
  ticket_no: ["R-1", "R-2", "R-3", "r 1", "R-1O", ""], part_no: ["P-1", "P-2", "0012", ""], supplier: ["FLI", "ZET", ""], order_no: ["O-1", "O-2", ""],
  finished_on: ["2026-04-01", "2026-04-02", "", "2026-02-01"], arrived_on: ["2026-04-01", ""], outcome: ["returned", "waiting", "", "sold"], size: ["7x11x3", "AS568-012", "big", ""],
};
const words = (column: Column) => OF_COLUMN[column.name] ?? [...(column.words?.slice(0, 3) ?? []), ...(column.words ? ["", "nonsense"] : []), ...BY_KIND[column.kind]];

/** One of our own tables, some of its columns in any order, and rows that repeat, contradict and break rules. */
const OWN: fc.Arbitrary<Cells> = fc.constantFrom(...TABLES.filter(({ name }) => name !== "tickets"), ...TABLES.filter(({ name }) => name === "tickets"))
  .chain(({ columns }) => {
    const own = columns.filter(({ made }) => !made), needed = own.filter(({ required }) => required);
    return fc.shuffledSubarray(own.filter(({ required }) => !required), { minLength: Math.min(2, own.length - needed.length) }).chain((more) => {
      const all = [...needed, ...more], row = fc.tuple(...all.map((column) => mostlyGood(words(column))));
      return fc.array(row, { maxLength: 8 }).map((rows) => ({ rows: [all.map(({ name }) => name), ...rows], heading: 0 }));
    });
  });

const blankOf = (width: number) => Array.from({ length: width }, () => "");

/** What happens to lists in use: rows keyed twice, blank rows between, headings again, a row too long or cut short. */
function inUse({ rows, heading }: Cells): fc.Arbitrary<Cells> {
  const head = rows[heading] ?? [], below = rows.slice(heading + 1);
  const change = fc.constantFrom("as it is", "as it is", "as it is", "twice", "blank", "headings", "long", "short");
  return fc.array(change, { minLength: below.length, maxLength: below.length }).map((changes) => ({
    heading, rows: [...rows.slice(0, heading + 1), ...below.flatMap((row, at) => {
      if (changes[at] === "twice") return [row, row];
      if (changes[at] === "blank") return [blankOf(head.length), row];
      if (changes[at] === "headings") return [row, head];
      if (changes[at] === "long") return [[...row, "beyond"]];
      return [changes[at] === "short" ? row.slice(0, -1) : row];
    })],
  }));
}

const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;
const encoded = (text: string, as: string): BlobPart =>
  as === "utf-16" ? Uint8Array.from([0xff, 0xfe, ...Buffer.from(text, "utf16le")]) : as === "latin" ? Uint8Array.from(Buffer.from(text, "latin1")) : as === "bom" ? `\uFEFF${text}` : text;

const AS_TEXT = fc.record({
  sign: fc.constantFrom(",", ";", "\t", "|"), end: fc.constantFrom("\n", "\r\n"), last: fc.boolean(), as: fc.constantFrom("utf-8", "bom", "utf-16", "latin"), always: fc.boolean(),
});

function asText({ rows }: Cells): fc.Arbitrary<Omit<AnyFile, "name">> {
  return AS_TEXT.map(({ sign, end, last, as, always }) => {
    const cell = (text: string) => (always || /["\n\r,;\t|]/.test(text) ? quoted(text) : text);
    const text = rows.map((cells) => cells.map(cell).join(sign)).join(end);
    return { content: encoded(`${text}${last ? end : ""}`, as), rows: rows.length - 1 };
  });
}

/** A workbook has no rows without cells, and nothing says where blank ones end. */
function asWorkbook({ rows }: Cells): Omit<AnyFile, "name"> {
  const there = rows.filter((cells) => cells.some((cell) => cell !== ""));
  return { content: xlsx([{ name: "Sheet1", xml: sheetData(rows) }]), rows: there.length - 1 };
}

function asJson({ rows, heading }: Cells): Omit<AnyFile, "name"> {
  const head = rows[heading] ?? [], below = rows.slice(heading + 1).map((cells) => Object.fromEntries(head.map((name, at) => [name || `column ${at + 1}`, cells[at] ?? ""])));
  return { content: JSON.stringify(below), rows: below.length };
}

const written = (cells: Cells): fc.Arbitrary<Omit<AnyFile, "name">> => fc.oneof(
  { weight: 6, arbitrary: asText(cells) }, { weight: 1, arbitrary: fc.constant(cells).map(asWorkbook) }, { weight: 1, arbitrary: fc.constant(cells).map(asJson) },
);

/** Any file a shop may have: our own tables, sheets of jobs, a till's sales, stock lists, in every format that can be written here. */
export const ANY_FILE: fc.Arbitrary<AnyFile> = fc.oneof({ weight: 3, arbitrary: OWN }, { weight: 4, arbitrary: sheetKinds })
  .chain(inUse).chain(written).map((file) => ({ ...file, name: "any" }));

/** Some files under names of their own, as one import brings them. */
export const someFiles = (most: number): fc.Arbitrary<Record<string, BlobPart>> =>
  fc.array(ANY_FILE, { minLength: 1, maxLength: most, size: "max" }).map((files) => Object.fromEntries(files.map(({ content }, at) => [`file ${at + 1}`, content])));
