import type { Notebook } from "./pieces.ts";

/** One notebook: its file, and the question it asks, as in the list of contents. */
export interface Entry { readonly file: string; readonly question: string; readonly load: () => Promise<{ readonly notebook: Notebook }> }

/** In the order to read them. */
export const CONTENTS: readonly Entry[] = [
  { file: "denominators", question: "Of how many? What a share of failures is divided by", load: () => import("../denominators.ts") },
  { file: "failures-from-chance", question: "Is this model worse, or was it chance?", load: () => import("../failures-from-chance.ts") },
  { file: "spells-against-rows", question: "Does one count parts, or rows of a table?", load: () => import("../spells-against-rows.ts") },
  { file: "rinsing", question: "What does rinsing buy?", load: () => import("../rinsing.ts") },
  { file: "stock-for-jobs", question: "What does money on the shelf do for jobs, not for lines?", load: () => import("../stock-for-jobs.ts") },
  { file: "season-and-queue", question: "How many reels will come, and what date can be promised?", load: () => import("../season-and-queue.ts") },
  { file: "how-the-advice-is-scored", question: "Would the stock advice have been good?", load: () => import("../how-the-advice-is-scored.ts") },
  { file: "life-limits-coverage", question: "Do the ranges of a part's life hold what they promise?", load: () => import("../life-limits-coverage.ts") },
  { file: "stock-calibration", question: "Does the shelf last as often as it is meant to?", load: () => import("../stock-calibration.ts") },
];
