import type { FailureRate } from "../../answers/failures/failure-rate.ts";
import { COST_WEIGHTS } from "../../answers/failures/besides.ts";
import type { Denominator, Opening } from "../../answers/filter.ts";
import { FEWEST_FOR_PERCENT } from "../../ui/format.ts";
import { PARTS_SPREAD } from "../../stats/own-level.ts";
import type { VerdictBook } from "./verdict-book.ts";
import { whose } from "./verdict-words.ts";

/** Below this many inspected a share is shown but not ranked. */
export const FEWEST_TO_RANK = 20;

/**
 * The verdict beside a row: of a model its word; of all models which of them stand out. A row without a verdict says what
 * is too few.
 */
export function rowVerdict(row: FailureRate, book: Pick<VerdictBook, "word" | "worst">): string {
  const word = book.word(row);
  if (word !== null) return word;
  const out = book.worst(row.position).filter((one) => one.word === "stands out");
  if (row.model === "*" && out.length > 0) return `stands out on ${out.map(whose).join(", ")}`;
  return row.inspected < FEWEST_FOR_PERCENT ? "too few" : "";
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

/** What the verdicts take for granted, without a source other than the trade's habit or trials on invented shops. */
export const ASSUMPTIONS: readonly string[] = [
  "A season is a calendar year. Each season is compared like with like by itself.",
  "Like with like means the same water, the same rinsing, days fished under 15, 15 to 39 or 40 and more, planned or not, body sealed or not.",
  "Reels that came in together live alike: until the records show how much, they are taken to fail alike in 5 of 100, so that each counts for a little less than a reel that came alone.",
  `Parts of one model differ among themselves: by about ${100 * PARTS_SPREAD} % up or down without any of them being bad. A part is blamed only for what goes beyond that and beyond the model’s other parts.`,
  `What failures cost adds up bench minutes at what the shop’s own labour charges bring in a minute, parts at their price, a day of waiting as ${COST_WEIGHTS.waiting_day_min} bench minutes and a comeback as ${COST_WEIGHTS.comeback_min}. It puts the rows in order and decides no verdict.`,
];

export const FAILURE_CAUTIONS: readonly string[] = [
  "These are reels that came in here, not reels sold: reels that never break, and reels thrown away, are not in these records.",
  "A part changed as routine is not a failure; it counts on Stock.",
  "Dear reels come in for planned service, cheap ones when broken, and some see more salt: a difference between models is not yet a fault of the model.",
  "What was opened is partly taken from the job: count only what was written down, above, to see how much hangs on that.",
  "Days in salt are what the customer guesses, and a reel that comes twice, or with its boat, is not two reels: such limits are widened.",
  "Say that a fault goes together with a model, not that the model causes it.",
];
