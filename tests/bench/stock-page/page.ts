import { askReplay } from "../../../src/answers/replay/ask-replay.ts";
import { replayInWorker } from "../../../src/answers/replay/replay-in-worker.ts";
import { boughtWith } from "../../../src/answers/budget/bought-with.ts";
import { BUDGET_DEFAULTS } from "../../../src/answers/budget/budget.ts";
import type { Budget, BudgetRecords } from "../../../src/answers/budget/budget.ts";
import { budgetInWorker } from "../../../src/answers/budget/budget-in-worker.ts";
import { dayAfter } from "../../../src/answers/days.ts";
import { seededRandom } from "../../../src/stats/random.ts";
import { guardScripts } from "../../../src/ui/own-scripts.ts";
import { demoInBrowser as demo } from "../demo-in-browser.ts";

const FIRST = "2023-01-01", DAYS = 1095;

/** A shop of so many parts and 20 jobs a week that need one to four of them, the first parts far oftener than the last. */
function shop(groups: number): BudgetRecords {
  const random = seededRandom(5), weights = Array.from({ length: groups }, (_, i) => 1 / (i + 3)), all = weights.reduce((sum, one) => sum + one, 0);
  const some = () => { let left = random() * all; return Math.max(0, weights.findIndex((weight) => (left -= weight) <= 0)); };
  const days = Array.from({ length: DAYS }, (_, i) => dayAfter(FIRST, i));
  const parts = days.flatMap((day) => Array.from({ length: Math.floor(20 / 7 + random()) }, (_, job) => {
    const needed = new Set(Array.from({ length: 1 + Math.floor(random() ** 2 * 4) }, some));
    return [...needed].map((at) => ({ ticket_no: `${day}-${job}`, day, interchange: `part ${at}`, pieces: random() < 0.85 ? 1 : 2 }));
  }).flat());
  return {
    question: { ...BUDGET_DEFAULTS, as_of: days.at(-1) ?? FIRST }, left_out: { refused: 0, uncounted: 0, unpriced: 0, can_do_without: 0 }, parts, intake: days.map((day) => ({ day, tickets: 3 })),
    groups: weights.map((weight, i) => {
      const pack = [1, 5, 10, 2, 1][i % 5] ?? 1;
      return {
        interchange: `part ${i}`, part_no: `${i}`, name: null, supplier: `supplier ${i % 6}`, part_class: "A" as const, unit_cost: 0.5 + random() * 15, pack_qty: pack, min_order_qty: pack,
        position: Math.floor(random() * 4 * weight * 10), lead_days: [6, 8, 4, 24, 34, 10][i % 6] ?? 6, lead_sd: [2, 3, 1.5, 9, 14, 4][i % 6] ?? 2, review_days: 14,
      };
    }),
  };
}

/** Milliseconds for the whole curve in the worker, for the list of another sum, and from a cancel to its end. */
async function budget(groups: number): Promise<{ curve: number; list: number; cancel: number; steps: number; scenarios: number }> {
  const records = shop(groups), began = performance.now(), answer: Budget = await budgetInWorker(records, {}), curve = performance.now() - began;
  const asked = performance.now();
  for (let i = 0; i < 100; i += 1) boughtWith(answer, 50 + 10 * i);
  const list = (performance.now() - asked) / 100, stop = new AbortController(), running = budgetInWorker(records, { signal: stop.signal });
  await new Promise((wait) => setTimeout(wait, curve / 2));
  const stopped = performance.now();
  stop.abort(new Error("called off"));
  await running.then(() => { throw new Error("the answer came before the cancel"); }, () => undefined);
  return { curve, list, cancel: performance.now() - stopped, steps: answer.steps.length, scenarios: answer.scenarios };
}

/** Milliseconds of the demo's replay, counting included. */
async function replay(): Promise<number> {
  const engine = await demo(), began = performance.now();
  await askReplay(engine, { as_of: "2026-01-05" }, { work: replayInWorker });
  const took = performance.now() - began;
  await engine.close();
  return took;
}

const trial = { budget, replay };
guardScripts();
Object.assign(globalThis, { stockTrial: trial });
declare global { var stockTrial: typeof trial; }
