import { benchRecords } from "../../src/answers/bench-load/bench-records.ts";
import { NO_HOURS } from "../../src/answers/bench-load/bench-hours.ts";
import { benchLoadOf } from "../../src/answers/bench-load/weeks-ahead.ts";
import { askBudget } from "../../src/answers/budget/ask-budget.ts";
import { ALL_FAILURES, failureRates } from "../../src/answers/failures/failure-rates.ts";
import { ALL_VERDICTS, failureVerdicts } from "../../src/answers/failures/failure-verdicts.ts";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { NO_RATES } from "../../src/answers/labour/bench-rates.ts";
import { labourPage } from "../../src/answers/labour/labour-page.ts";
import { lots } from "../../src/answers/lots/lots.ts";
import { morning } from "../../src/answers/morning/morning.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import { allWear } from "../../src/answers/wear/ask-wear.ts";
import { ALL_WEAR } from "../../src/answers/wear/wear-records.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { fill, TODAY } from "./shop-streams.ts";
import type { ShopStreams } from "./shop-streams.ts";

/** How long each room's answer takes in Node, first asked, with so many inspections; milliseconds. */
export interface AnswersAtSize { readonly inspections: number; readonly answers: readonly { readonly what: string; readonly took: number }[] }

const ASKED: readonly { what: string; ask: (engine: Engine) => Promise<unknown> }[] = [
  { what: "Morning sheet: what to order, what fails, what is slow", ask: (engine) => morning(engine, { as_of: TODAY, rows_to_fix: 0 }) },
  { what: "Failures: shares of all parts on all models", ask: (engine) => failureRates(engine, ALL_FAILURES) },
  { what: "Failures: verdicts on all of them", ask: (engine) => failureVerdicts(engine, ALL_VERDICTS) },
  { what: "Failures: bad batches", ask: (engine) => lots(engine) },
  { what: "Stock: what to order", ask: (engine) => restock(engine, { as_of: TODAY }) },
  { what: "Stock: money against jobs", ask: (engine) => askBudget(engine, { as_of: TODAY }) },
  { what: "Salt & wear: how long every part lasts", ask: (engine) => allWear(engine, ALL_WEAR) },
  { what: "Labour: times, money, drivers, drift", ask: (engine) => labourPage(engine, EVERYTHING, NO_RATES) },
  { what: "Season: 26 weeks of 1,000 futures", ask: async (engine) => benchLoadOf(await benchRecords(engine, TODAY, { hours: NO_HOURS, closures: [], rates: NO_RATES })) },
];

/** Loads a shop and asks what each room asks first, one after the other. */
export async function answersAtSize(shop: ShopStreams): Promise<AnswersAtSize> {
  const engine = await openNodeEngine();
  try {
    await fill(engine, shop);
    const answers: { what: string; took: number }[] = [];
    for (const { what, ask } of ASKED) {
      const began = performance.now();
      await ask(engine);
      answers.push({ what, took: performance.now() - began });
      console.log(`${what}: ${(answers.at(-1)?.took ?? 0).toFixed(0)} ms`);
    }
    const [counted] = await engine.rows<{ n: number }>("-- Inspections.\n-- Columns: n bigint\nselect count(*) as n from inspected where counted or written order by n");
    return { inspections: counted?.n ?? 0, answers };
  } finally {
    await engine.close();
  }
}
