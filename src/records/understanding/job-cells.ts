import { Wrong, quoted } from "../checking/wrong.ts";
import { yesNoCell } from "../checking/yes-no-cell.ts";
import { cameInFrom } from "../came-in.ts";
import { jobNamed, plainWords, reelKindNamed } from "../vocabulary.ts";
import { amountOf } from "./cells/amount.ts";
import { dayOf, numberedDay } from "./cells/day.ts";
import { durationOf } from "./cells/duration.ts";
import type { TimeUnit } from "./cells/duration.ts";
import { outcomeSaid } from "./cells/outcome.ts";
import { countSaid, rinseSaid, saysNothing, watersSaid } from "./cells/said.ts";
import type { Conventions } from "./conventions.ts";
import type { FixCounts } from "./row-outcome.ts";

/** What a cell says in our words; null when it says nothing we can keep, a fault when its row cannot come in with it. */
export type CellRead = string | null | Wrong;

export interface CellContext extends Conventions {
  readonly last_day: string;
  readonly heading: string;
  readonly fixes: FixCounts;
}

/** More than ten hours on one reel is a reel that waited (common practice, no source). */
const MOST_MINUTES = 600;
const UNITS: Readonly<Record<string, TimeUnit>> = { labour_min: "minutes", labour_hours: "hours", labour_time: "either" };

function day(text: string, context: CellContext): CellRead {
  const read = dayOf(text, context), parts = numberedDay(text, context.last_day);
  if (read === null) context.fixes.add("a day of zeros was read as no day", text, "empty");
  if (typeof read === "string" && parts?.short_year) context.fixes.add("a year of two digits was read as the latest that is past", text, read);
  if (typeof read === "string" && parts && parts.year === null) context.fixes.add("the year was added", text, read);
  return read;
}

function money(text: string, { decimal, currency, fixes, heading }: CellContext): CellRead {
  const read = amountOf(text, decimal);
  if (!read) return null;
  if (read.currency !== null && currency !== null && read.currency !== currency) return new Wrong(`${quoted(text)} is in another currency than the other amounts (${currency}); nothing is converted, so write it in ${currency}`);
  if (/\d,\d{1,2}$/.test(text) && decimal !== "comma") fixes.add(`a comma in ${heading} was read as the decimal sign`, text, String(read.value));
  return String(read.value);
}

const kept = (value: string | null): CellRead => value;

function yesNo(text: string): CellRead {
  const read = yesNoCell(text);
  return read instanceof Wrong ? null : read ? "yes" : "no";
}

function water(text: string, { mixed_water, fixes }: CellContext): CellRead {
  const [saltiest, other] = watersSaid(text);
  if (other === undefined) return saltiest ?? null;
  if (mixed_water !== "saltiest" || saltiest === undefined) return null;
  fixes.add("several waters in one cell were read as the saltiest", text, saltiest);
  return saltiest;
}

function salt(text: string, context: CellContext): CellRead {
  const read = yesNo(text);
  return read === "yes" ? "salt" : read === "no" ? "fresh" : water(text, context);
}

const CAME_IN: Readonly<Record<string, string>> = { routine: "planned", planned: "planned", service: "planned", complaint: "complaint", fault: "complaint", accident: "accident", immersion: "immersion", dunked: "immersion" };

function count(text: string, { fixes, heading }: CellContext): CellRead {
  const read = countSaid(text);
  if (read !== null && !/^\d/.test(text)) fixes.add(`“about” in ${heading} was taken as the number itself`, text, String(read));
  return read === null ? null : String(read);
}

const READERS: Readonly<Record<string, (text: string, context: CellContext) => CellRead>> = {
  received_on: day, finished_on: day, labour_charge: money, parts_charge: money, warranty: yesNo,
  reel_kind: (text) => kept(reelKindNamed(text)), water, salt_flag: salt, rinse: (text) => kept(rinseSaid(text)),
  salt_days: count, use_days: count, months_since_service: count, parts_wait_days: count,
  job: (text) => kept(jobNamed(text)), outcome: (text) => kept(outcomeSaid(text)), came_in: (text) => CAME_IN[plainWords(text)] ?? cameInFrom(text),
};

/**
 * Reads one cell of a sheet of jobs.
 *
 * @param means a meaning that stands for one of our columns
 * @param text not blank
 */
export function jobCell(means: string, text: string, context: CellContext): CellRead {
  const read = READERS[means];
  if (!read) return saysNothing(text) ? null : text;
  return read(text, context);
}

/** The minutes of each reel; null when the cell is no time. */
export interface JobTime {
  readonly minutes: readonly number[];
  /** The time is for each of several reels. */
  readonly each: boolean;
}

/** Reads the time of one job; null when it is none, or so long that it counts waiting. */
export function jobTime(means: string, text: string, { fixes, heading }: Pick<CellContext, "fixes" | "heading">): JobTime | null {
  const unit = UNITS[means] ?? "either", read = durationOf(text, unit);
  if (!read) return null;
  const all = read.minutes.reduce((sum, minutes) => sum + minutes, 0);
  if (all === 0) {
    fixes.add(`0 in ${heading} was read as not written down`, text, "empty");
    return { minutes: [], each: false };
  }
  if (all > MOST_MINUTES) return null;
  if (unit === "hours") fixes.add(`${heading} was read as hours and kept as minutes`, text, String(all));
  else if (read.unit_guessed || !/^\d+$/.test(text)) fixes.add(`hours or fractions in ${heading} were read as minutes`, text, String(all));
  return { minutes: read.minutes, each: /\b(?:ea|each)\b/i.test(text) };
}

/** Why a time is not kept. */
export const WAITED = "a time over ten hours was taken for waiting and left out";
export const isTime = (means: string): boolean => means in UNITS;
