import type { RowCounted } from "../../records/merging/rows-behind.ts";
import { position, positionNamed } from "../../records/vocabulary.ts";
import { DASH, date, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";
import { named } from "./merges-rows.ts";

const place = (code: string | null): string | null => (code !== null && positionNamed(code) === code ? position(code).name : code);
const done = ({ action, qty, grade }: RowCounted): string =>
  [[action ?? "seen", qty === null ? "" : `×${qty}`].filter((part) => part !== "").join(" "), grade === null ? "" : `grade ${grade}`].filter((part) => part !== "").join(", ");

const TICKET: readonly Column<RowCounted>[] = [
  { key: "ticket", label: "Ticket", value: ({ ticket_no }) => ticket_no },
  { key: "day", label: "Came in", value: ({ received_on }) => received_on, text: ({ received_on }) => date(received_on) },
  { key: "reel", label: "Reel", value: (row) => named(row) },
];
const PLACE: readonly Column<RowCounted>[] = [
  { key: "file", label: "File", wide: true, value: ({ source_file }) => source_file },
  { key: "line", label: "Line", align: "right", value: ({ source_line }) => source_line, text: ({ source_line }) => number(source_line) },
];

/** Findings behind a number. */
export const FOUND_COLUMNS: readonly Column<RowCounted>[] = [
  ...TICKET, { key: "position", label: "Part", value: (row) => place(row.position) }, { key: "part", label: "Its number", value: ({ part_no }) => part_no },
  { key: "done", label: "What was done", value: done }, ...PLACE,
];

/** Tickets behind a number. */
export const JOB_COLUMNS: readonly Column<RowCounted>[] = [
  ...TICKET, { key: "job", label: "Job", value: ({ job }) => job },
  { key: "minutes", label: "Minutes as written", align: "right", value: ({ labour_min }) => labour_min, text: ({ labour_min }) => (labour_min === null ? DASH : number(labour_min)) }, ...PLACE,
];

/** What is listed, in words; the parts that are asked for in the address. */
export function behindWords(of: { position: string; part: string; job: string; kind: string; maker: string; model: string }): string {
  const what = of.part !== "" ? `Use of ${of.part}` : of.position !== "" ? `Findings at ${(place(of.position) ?? of.position).toLowerCase()}` : `Tickets${of.job === "" ? "" : ` of the job ${of.job}`}`;
  const reel = [of.maker, of.model].filter((part) => part !== "").join(" ");
  return [what, reel === "" ? "" : `on ${reel}`, of.kind === "" ? "" : `(${of.kind})`].filter((part) => part !== "").join(" ");
}
