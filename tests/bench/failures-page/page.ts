import { comebacks } from "../../../src/answers/comebacks/comebacks.ts";
import { ALL_FAILURES, failureRates } from "../../../src/answers/failures/failure-rates.ts";
import { ALL_VERDICTS } from "../../../src/answers/failures/failure-verdicts.ts";
import type { JudgeWork } from "../../../src/answers/failures/failure-verdicts.ts";
import { verdictsInWorker } from "../../../src/answers/failures/judge-in-worker.ts";
import { lotsInWorker } from "../../../src/answers/lots/lots-in-worker.ts";
import type { Engine } from "../../../src/db/engine.ts";
import { guardScripts } from "../../../src/ui/own-scripts.ts";
import { demoInBrowser as demo, grow as growBy, inspections } from "../demo-in-browser.ts";

/** Milliseconds of the verdicts: counting in the engine, judging in the worker, both. */
export interface VerdictTime { counting: number; judging: number; whole: number }

/** Each round on other days, in other waters and under other care, so that the sets of conditions fill as a large shop fills them. */
const grow = (engine: Engine, rounds: number) => growBy(engine, rounds, [
  "batch || '-' || n as batch", "received_on + (n * 37 % 150)::integer as received_on", "finished_on + (n * 37 % 150)::integer as finished_on",
  "salt_days * (1 + n % 3) % 70 as salt_days", "use_days * (1 + n % 3) % 70 as use_days",
  "case when water is null then null else ['fresh', 'brackish', 'salt', 'salt', water][1 + n % 5] end as water",
  "case when rinse is null then null else ['always', 'sometimes', 'never', rinse][1 + n % 4] end as rinse",
]);

async function timed(ask: () => Promise<unknown>): Promise<number> {
  const began = performance.now();
  await ask();
  return performance.now() - began;
}

/** All verdicts, as the room asks for them. */
async function verdicts(engine: Engine): Promise<VerdictTime> {
  let judging = 0;
  const watch = (work: JudgeWork): JudgeWork => async (asked, means) => {
    const began = performance.now(), answer = await work(asked, means);
    judging = performance.now() - began;
    return answer;
  };
  const whole = await timed(() => verdictsInWorker(engine, ALL_VERDICTS, {}, watch));
  return { counting: whole - judging, judging, whole };
}

const shares = (engine: Engine) => timed(() => failureRates(engine, { ...ALL_FAILURES, opening: "planned" }));
const batches = (engine: Engine) => timed(() => lotsInWorker(engine));
const EVERY = { reel_kind: null, water: null, from: null, to: null, group: null, watched_until: "last visit", curves: true } as const;
const back = (engine: Engine) => timed(() => comebacks(engine, { ...EVERY, maker: null, model: null, position: "ar_clutch" }));

/** Milliseconds from a cancel, so long after asking, to the answer's end, with the steps told until then. */
async function cancelled(engine: Engine, after: number): Promise<{ took: number; steps: string[] }> {
  const stop = new AbortController(), steps: string[] = [];
  const answer = verdictsInWorker(engine, ALL_VERDICTS, { signal: stop.signal, report: ({ step, done }) => { steps.push(`${step} ${done}`); } });
  let at = 0;
  setTimeout(() => { at = performance.now(); stop.abort(new Error("called off")); }, after);
  await answer.then(() => { throw new Error("the answer came before the cancel"); }, () => undefined);
  return { took: performance.now() - at, steps };
}

const trial = { demo, grow, inspections, verdicts, shares, batches, back, cancelled };
guardScripts();
Object.assign(globalThis, { failureTrial: trial });
declare global { var failureTrial: typeof trial; }
