import { cameInFrom } from "../came-in.ts";
import { yesNoCell } from "../checking/yes-no-cell.ts";
import { noteFindings } from "../notes/note-findings.ts";
import { jobNamed, reelKindNamed } from "../vocabulary.ts";
import { amountOf } from "./cells/amount.ts";
import { dayOf } from "./cells/day.ts";
import { durationOf } from "./cells/duration.ts";
import { countSaid, rinseSaid, saysNothing, waterSaid } from "./cells/said.ts";
import { outcomeSaid } from "./cells/outcome.ts";

/** What the values of one column look like: for each reading the share of different values that it understands, 0…1. */
export interface ColumnLook {
  readonly filled: number;
  /** The commonest different values. */
  readonly sample: readonly string[];
  readonly date: number;
  readonly time: number;
  readonly money: number;
  readonly number: number;
  readonly yes_no: number;
  readonly water: number;
  readonly rinse: number;
  readonly kind: number;
  readonly job: number;
  readonly outcome: number;
  readonly reel: number;
  readonly parts: number;
  readonly complaint: number;
  /** Letters, not only figures. */
  readonly words: number;
  /** At most four letters. */
  readonly short: number;
  /** Different values for each filled cell. */
  readonly different: number;
}

const SAMPLE = 5, LOOKED_AT = 120, NOTES = 40;
const ANY_DAY = { order: "day first", year: 2000, last_day: "2999-12-31" } as const, MONTH_FIRST = { ...ANY_DAY, order: "month first" } as const;
const isDay = (text: string) => typeof dayOf(text, ANY_DAY) === "string" || typeof dayOf(text, MONTH_FIRST) === "string";
const REEL = /^\p{L}{3,}(?: \p{L}+)* ?-?\d{1,4}\b/u;

const isLooked = {
  date: (text: string) => (/\d/.test(text) ? isDay(text) : false),
  time: (text: string) => durationOf(text, "either") !== null,
  money: (text: string) => amountOf(text, null) !== null,
  number: (text: string) => countSaid(text) !== null,
  yes_no: (text: string) => typeof yesNoCell(text) === "boolean",
  water: (text: string) => waterSaid(text) !== null,
  rinse: (text: string) => rinseSaid(text) !== null,
  kind: (text: string) => reelKindNamed(text) !== null,
  job: (text: string) => jobNamed(text) !== null,
  outcome: (text: string) => outcomeSaid(text) !== null,
  reel: (text: string) => text.length < 60 && REEL.test(text),
  complaint: (text: string) => cameInFrom(text) !== null,
  words: (text: string) => /\p{L}{3,}/u.test(text),
  short: (text: string) => text.length <= 4,
} as const;

const ditto = /^(?:["'”“〃]+|-"-|do\.?|ditto)$/i;

/** @param cells the column's cells of the first rows of data */
export function columnLook(cells: readonly string[]): ColumnLook {
  const counts = new Map<string, number>();
  let filled = 0;
  for (const cell of cells) {
    const text = cell.trim();
    if (text === "" || ditto.test(text)) continue;
    filled += 1;
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  const common = [...counts].sort((a, b) => b[1] - a[1]).map(([text]) => text), told = common.filter((text) => !saysNothing(text)).slice(0, LOOKED_AT);
  const share = (test: (text: string) => boolean, of = told) => (of.length === 0 ? 0 : of.filter(test).length / of.length);
  const shares = Object.fromEntries(Object.entries(isLooked).map(([name, test]) => [name, share(test)])) as Record<keyof typeof isLooked, number>;
  const parts = share((text) => noteFindings(text.slice(0, 300), { reel_kind: null, cell: "parts" }).findings.length > 0, told.slice(0, NOTES));
  return { ...shares, parts, filled, sample: common.slice(0, SAMPLE), different: filled === 0 ? 0 : counts.size / filled };
}
