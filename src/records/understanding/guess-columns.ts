import { plainHeading } from "../reading/heading-words.ts";
import { positionNamed } from "../vocabulary.ts";
import type { SheetKind } from "./answers.ts";
import type { ColumnLook } from "./column-look.ts";
import { HEADINGS } from "./heading-signs.ts";
import { meaningNamed } from "./meanings.ts";
import type { Sure } from "./understanding.ts";

export interface ColumnGuess {
  readonly means: string | null;
  readonly sure: Sure;
  readonly why: string;
  /** The next best meaning, when it is nearly as good; null when there is none. */
  readonly rival: string | null;
}

interface Candidate { readonly at: number; readonly means: string; readonly heading: number; readonly fit: number; readonly points: number }

/** The reading whose share of understood values speaks for a meaning; null where any text will do. */
const FITS: Readonly<Record<string, keyof ColumnLook | null>> = {
  received_on: "date", finished_on: "date", due_on: "date", reel_kind: "kind", water: "water", salt_flag: "yes_no", salt_days: "number", use_days: "number",
  months_since_service: "number", rinse: "rinse", job: "job", labour_min: "time", labour_hours: "time", labour_time: "time", warranty: "yes_no",
  outcome: "outcome", labour_charge: "money", parts_charge: "money", work_text: "words", parts_text: "words", complaint: "words", complaint_work_text: "words",
  reel: "words", model: "words", maker: "words", customer: "words", unit_cost: "money", qty: "number", net: "money", parts_wait_days: "number",
};
/** Meanings a column may be taken for by its values alone. */
const BY_VALUES: readonly (readonly [string, keyof ColumnLook, number])[] = [["received_on", "date", 0.7], ["reel", "reel", 0.6], ["work_text", "parts", 0.4]];
const VETO = 0.2;

const fitOf = (means: string, look: ColumnLook): number => {
  const reading = FITS[means];
  return reading === undefined || reading === null || look.filled === 0 ? 0.7 : Number(look[reading]);
};

function slotMeaning(plain: string): string | null {
  const found = /^(find|finding|fault found|act|action)\s?([1-9])$/.exec(plain);
  return found ? `${found[1]?.startsWith("act") ? "action" : "fault"}_slot_${found[2]}` : null;
}

/** A heading that is the name of a part, over figures, crosses or blanks: how many of it were fitted. */
function partMeaning(heading: string, look: ColumnLook): string | null {
  const place = look.filled > 0 && (look.number > 0.8 || look.yes_no > 0.8) ? positionNamed(heading) : null;
  return place === null ? null : `part:${place}`;
}

function candidates(headings: readonly string[], looks: readonly ColumnLook[], kind: SheetKind): Candidate[] {
  return headings.flatMap((heading, at) => {
    const plain = plainHeading(heading), look = looks[at];
    if (!look) return [];
    const own = kind === "jobs" ? slotMeaning(plain) ?? partMeaning(heading, look) : null;
    if (own !== null) return [{ at, means: own, heading: 1, fit: 1, points: 3 }];
    const named = (HEADINGS[kind] ?? []).flatMap(({ means, strong, weak }) => {
      const strength = strong.test(plain) ? 1 : weak?.test(plain) ? 0.5 : 0, fit = fitOf(means, look);
      return strength === 0 || (fit < VETO && look.filled > 0) ? [] : [{ at, means, heading: strength, fit, points: 2 * strength + fit }];
    });
    const seen = kind !== "jobs" || named.length > 0 ? [] : BY_VALUES.flatMap(([means, reading, least]) => {
      const fit = Number(look[reading]);
      return fit < least ? [] : [{ at, means, heading: 0, fit, points: fit }];
    });
    return [...named, ...seen];
  });
}

function sureOf({ heading, fit }: Candidate): Sure {
  if (heading === 1 && fit >= 0.6) return "certain";
  return heading > 0 && fit >= 0.3 ? "likely" : "a guess";
}

const READ_AS: Readonly<Record<string, string>> = {
  date: "are dates", time: "are times", money: "are amounts", number: "are numbers", yes_no: "are yes or no", water: "name a water", rinse: "say how often",
  kind: "name a kind of reel", job: "name a job", outcome: "say how it ended", reel: "look like reels", parts: "name parts", words: "are words",
};

function whyOf({ means, heading, fit }: Candidate): string {
  const reading = FITS[means] ?? (heading === 0 ? BY_VALUES.find(([name]) => name === means)?.[1] : null), share = fit === 1 ? "all its values" : `${Math.round(fit * 100)} % of its values`;
  const values = reading && reading !== "words" ? `${share} ${READ_AS[reading] ?? "fit"}` : "";
  const says = heading === 1 ? "its heading says so" : heading > 0 ? "its heading sounds like it" : "";
  return [says, values].filter((part) => part !== "").join(", and ") || "its place among the others";
}

/**
 * What each column of a sheet is taken for, by its heading and its values; each meaning goes to the column that fits it best.
 *
 * @param headings as written, empty where there is none
 */
export function guessColumns(headings: readonly string[], looks: readonly ColumnLook[], kind: SheetKind): ColumnGuess[] {
  const all = candidates(headings, looks, kind).sort((a, b) => b.points - a.points || a.at - b.at), taken = new Set<string>();
  const chosen = new Map<number, Candidate>();
  for (const one of all) {
    if (chosen.has(one.at) || (taken.has(one.means) && !meaningNamed(one.means, kind)?.many)) continue;
    chosen.set(one.at, one);
    taken.add(one.means);
  }
  return headings.map((_, at): ColumnGuess => {
    const best = chosen.get(at);
    if (!best) return { means: null, sure: "not known", why: "neither its heading nor its values tell", rival: null };
    const rival = all.find((one) => one.at === at && one.means !== best.means && one.points > best.points - 0.3);
    return { means: best.means, sure: sureOf(best), why: whyOf(best), rival: rival?.means ?? null };
  });
}
