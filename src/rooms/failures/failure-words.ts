import type { FailureRate } from "../../answers/failures/failure-rate.ts";
import type { Denominator, Opening } from "../../answers/filter.ts";
import { FEWEST_FOR_PERCENT } from "../../ui/format.ts";

/** Below this many inspected a share is shown but not ranked. */
export const FEWEST_TO_RANK = 20;
/** A model stands out only with at least this many failures, this far over all models, and a q below this. */
export const STANDS_OUT = { failed: 5, times: 1.25, q: 0.05 } as const;

/**
 * Remark beside a row: too few, stands out, or nothing. `all` is the share of all models at the position.
 *
 * Only planned openings can stand out: who comes when something is broken would stand out by that alone.
 */
export function failureRemark(row: FailureRate, all: number | null): string {
  if (row.inspected < FEWEST_FOR_PERCENT) return "too few to say";
  if (row.inspected < FEWEST_TO_RANK) return "too few to rank";
  if (row.opening !== "planned") return "";
  const far = all !== null && row.pooled_low !== null && row.pooled_low > STANDS_OUT.times * all;
  return far && row.failed >= STANDS_OUT.failed && row.q_value !== null && row.q_value < STANDS_OUT.q ? "stands out" : "";
}

/** One line on what the choice of openings means. */
export const OPENING_LINES: Readonly<Record<Opening, string>> = {
  planned: "Planned services only: the fairest comparison, because these reels were not brought in by the fault itself.",
  complaint: "Only reels that came in with something wrong (complaint, accident or a dunking): shares are high, because the fault brought them in.",
  "*": "Planned services and complaints together: models whose owners only come when something is broken look worse than they are.",
};

/** One line on what the choice of counting means. */
export const COUNTING_LINES: Readonly<Record<Denominator, string>> = {
  coverage: "Inspected is what the job opens: a full service without a word about a part counts it as looked at and fine.",
  strict: "Inspected is only what somebody wrote down: sound parts are seldom written, so shares come out too high.",
};

export const FAILURE_CAUTIONS: readonly string[] = [
  "These are reels that came in here, not reels sold: reels that never break, and reels thrown away, are not in these records.",
  "A part changed as routine is not a failure; it counts on the Stock sheet.",
  "Dear reels come in for planned service, cheap ones when broken, and some see more salt: a difference between models is not yet a fault of the model.",
];
