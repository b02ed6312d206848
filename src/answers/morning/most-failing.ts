import type { FailureRate } from "../failures/failure-rate.ts";

/** No ranking under twenty inspected (TRADE.md 8.4): a short record would lead or trail by chance. */
export const FEWEST_TO_RANK = 20;
/** With fewer rows than this there is no ranking to speak of. */
const FEWEST_ROWS = 5;

export interface MostFailing {
  /** One position on one model each. */
  readonly models: readonly FailureRate[];
  /** One position over all models each. */
  readonly positions: readonly FailureRate[];
  readonly opening: "planned" | "*";
}

const rankable = (rates: readonly FailureRate[]) => rates.filter((rate) => rate.inspected >= FEWEST_TO_RANK && rate.failed > 0);
const height = (rate: FailureRate) => rate.rate_low ?? 0;

function highest(rates: readonly FailureRate[], shown: number): FailureRate[] {
  return [...rates].sort((a, b) => height(b) - height(a) || b.inspected - a.inspected).slice(0, shown);
}

/**
 * The positions and models that fail most, by the lower limit of their share: the height of which one can be sure, so
 * that a short record does not lead by chance. Of planned openings wherever they give five rows to rank, because complaint visits are selected by the failure itself; else of all openings, and it says so.
 */
export function mostFailing(planned: readonly FailureRate[], all: readonly FailureRate[], shown: number): MostFailing {
  const enough = rankable(planned).filter((rate) => rate.model !== "*").length >= FEWEST_ROWS, rates = rankable(enough ? planned : all);
  return {
    models: highest(rates.filter((rate) => rate.model !== "*"), shown),
    positions: highest(rates.filter((rate) => rate.model === "*"), shown),
    opening: enough ? "planned" : "*",
  };
}
