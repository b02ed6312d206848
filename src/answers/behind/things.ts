/** One row of a file. */
export interface Source {
  readonly import_no: number;
  readonly source_file: string;
  /** Line of that file, from 1 with the heading. */
  readonly source_line: number;
}

interface Thing {
  readonly ticket_no: string;
  readonly received_on: string;
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  readonly job: string | null;
  /** In the number; else `why` not. */
  readonly counted: boolean;
  readonly hit: boolean;
  readonly why: string | null;
  readonly position: string | null;
  readonly part_no: string | null;
  /** Parts followed: the exposure at which it was last good, and by which it had failed. Jobs: charge and minutes. Pieces: none and pieces. Comebacks: none and days. */
  readonly low: number | null;
  readonly high: number | null;
  /** What its rows say, in the words of the tables. */
  readonly said: string | null;
}

/** One thing that a number counts, with every row that made it. */
export interface ThingCounted extends Thing {
  readonly sources: readonly Source[];
}

/** A row of the statements of this folder: a thing and one of the rows that made it; rows of a thing follow each other. */
export type SourceRow = Thing & Source & { readonly thing: number };

const sameRow = (a: Source, b: Source) => a.import_no === b.import_no && a.source_file === b.source_file && a.source_line === b.source_line;

/** Rows of a thing as one, each source once. */
export function thingsOf(rows: readonly SourceRow[]): ThingCounted[] {
  const things: (Omit<ThingCounted, "sources"> & { sources: Source[] })[] = [];
  let last: number | null = null;
  for (const { thing, import_no, source_file, source_line, ...row } of rows) {
    const source = { import_no, source_file, source_line }, open = thing === last ? things.pop() : undefined;
    const said = [open?.said, row.said].filter((words) => words !== null && words !== undefined && words !== "").join("; ");
    things.push({ ...row, part_no: open?.part_no ?? row.part_no, said: said === "" ? null : said, sources: [...(open?.sources ?? []).filter((one) => !sameRow(one, source)), source] });
    last = thing;
  }
  return things;
}
