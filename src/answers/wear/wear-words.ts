import type { Clock, Wears, WearStatus } from "./wear.ts";

export const CLOCK_WORDS: Readonly<Record<Clock, string>> = { salt_days: "salt days", use_days: "days fished", months: "months" };

export const CLOCK_WORD: Readonly<Record<Clock, string>> = { salt_days: "salt day", use_days: "day fished", months: "month" };

/** Fewest failures, and fewest parts seen good, for a curve. */
export const FEWEST = 5;

const STATUS_WORDS: Readonly<Record<WearStatus, string>> = {
  "ok": "",
  "separated": "All failures came after all the good ones, so only a rough curve can be drawn: it leans on how such parts usually wear.",
  "not wear-out": "The parts that were fished longer did not fail more often. This does not look like wear.",
  "too few failures": `Under ${FEWEST} failures: no curve.`,
  "too few good": `Under ${FEWEST} parts were seen good: no curve.`,
  "none failed": "None has failed.",
  "all failed": "Every one had failed when it was first looked at.",
  "one exposure": "All were looked at after the same time, so nothing shows how failures grow.",
  "no exposure": "On this clock no part was in use, or it is not written.",
  "confounded": "The conditions always come together and cannot be told apart.",
  "did not converge": "No curve fits these records.",
};

export const statusText = (status: WearStatus): string => STATUS_WORDS[status];

/** What is said of a part with a curve that does not wear with the clock. */
export function wearsText(wears: Wears | null, clock: Clock): string {
  if (wears === "no") return `No likelier to fail with more ${CLOCK_WORDS[clock]}.`;
  return wears === "not plain" ? `Not plainly likelier to fail with more ${CLOCK_WORDS[clock]}.` : "";
}

/** A figure as it is said: whole from 10 on, one decimal under it. */
export const said = (value: number): string => (value >= 10 ? String(Math.round(value)) : String(Math.round(value * 10) / 10));
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
