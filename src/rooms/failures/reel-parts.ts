import type { FailureRate } from "../../answers/failures/failure-rate.ts";
import { sideOf, VERDICT_WORDS, type Verdict } from "../../answers/failures/verdict.ts";
import type { Opening } from "../../answers/filter.ts";
import { grouped } from "../../answers/grouped.ts";
import { shareInterval } from "../../stats/share-interval.ts";
import { shareTone, SHARE_STEPS, type PartFigures, type Tone } from "../../ui/exploded/drawn-part.ts";
import { FEWEST_FOR_PERCENT } from "../../ui/format.ts";
import { countsInWords } from "../../ui/share-words.ts";
import { verdictTone, WORD_LINES } from "./verdict-words.ts";

export interface LegendLine { readonly tone: Tone; readonly words: string }

/** Kinds of reel among the rows, most inspected first. */
export function kindsSeen(rates: readonly FailureRate[]): readonly string[] {
  const models = rates.filter((row) => row.model !== "*" && row.reel_kind !== null && row.inspected > 0);
  const sum = (rows: readonly FailureRate[]) => rows.reduce((total, row) => total + row.inspected, 0);
  return [...grouped(models, (row) => row.reel_kind ?? "")].sort(([, a], [, b]) => sum(b) - sum(a)).map(([kind]) => kind);
}

/** The parts of one kind of reel over all its models, filled by their share failed. */
export function partsByShare(rates: readonly FailureRate[], kind: string, href: (position: string) => string): readonly PartFigures[] {
  const of_kind = rates.filter((row) => row.reel_kind === kind && row.model !== "*" && row.inspected > 0);
  return [...grouped(of_kind, (row) => row.position).values()].map((rows) => {
    const inspected = rows.reduce((sum, row) => sum + row.inspected, 0), failed = rows.reduce((sum, row) => sum + row.failed, 0);
    const few = inspected < FEWEST_FOR_PERCENT, [rate_low, rate_high] = shareInterval(failed, inspected), { position = "", position_name = "" } = rows[0] ?? {};
    return {
      position, name: position_name, figures: countsInWords({ failed, inspected, rate_low, rate_high }), word: null,
      tone: shareTone(few ? null : failed / inspected), href: href(position),
    };
  });
}

export const SHARE_LEGEND: readonly LegendLine[] = [...SHARE_STEPS, { tone: "few", words: "too few for a share" }];

/** The parts of one model, filled by their verdict. */
export function partsByVerdict(verdicts: readonly Verdict[], opening: Opening, href: (position: string) => string): readonly PartFigures[] {
  return verdicts.map((verdict) => {
    const { failed, inspected, rate } = sideOf(verdict, opening);
    return {
      position: verdict.position, name: verdict.position_name, figures: countsInWords({ failed, inspected, rate_low: rate.low, rate_high: rate.high }),
      word: verdict.word, tone: verdictTone(verdict.word), href: href(verdict.position),
    };
  });
}

export const VERDICT_LEGEND: readonly LegendLine[] = VERDICT_WORDS.map((word) => ({ tone: verdictTone(word), words: `${word}: ${WORD_LINES[word]}` }));
