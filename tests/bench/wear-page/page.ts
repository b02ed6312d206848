import { advise, allWear } from "../../../src/answers/wear/ask-wear.ts";
import { ALL_WEAR } from "../../../src/answers/wear/wear-records.ts";
import type { DoWork } from "../../../src/answers/wear/wear-messages.ts";
import { workInWorker } from "../../../src/answers/wear/work-in-worker.ts";
import type { Engine } from "../../../src/db/engine.ts";
import { guardScripts } from "../../../src/ui/own-scripts.ts";
import { demoInBrowser as demo, grow as growBy, inspections } from "../demo-in-browser.ts";

/** Milliseconds of one answer: counting in the engine, fitting in the worker, both. */
export interface WearTime { counting: number; fitting: number; whole: number }

/** Each round's reels were fished a little more. */
const grow = (engine: Engine, rounds: number) => growBy(engine, rounds, ["salt_days + n % 4 as salt_days", "use_days + n % 4 as use_days"]);

async function timed(ask: (work: DoWork) => Promise<unknown>): Promise<WearTime> {
  let fitting = 0;
  const began = performance.now();
  await ask(async (kind, records, means) => {
    const asked = performance.now(), answer = await workInWorker(kind, records, means);
    fitting = performance.now() - asked;
    return answer;
  });
  const whole = performance.now() - began;
  return { counting: whole - fitting, fitting, whole };
}

const all = (engine: Engine) => timed((work) => allWear(engine, ALL_WEAR, { work }));
const advice = (engine: Engine, model: string | null) =>
  timed((work) => advise(engine, { reel_kind: model === null ? "spinning" : null, maker: null, model, water: "salt", rinse: "never", risk: 0.1 }, { work }));

/** Milliseconds from a cancel, so long after asking, to the answer's end, with the steps told until then. */
async function cancelled(engine: Engine, after: number): Promise<{ took: number; steps: string[] }> {
  const stop = new AbortController(), steps: string[] = [], answer = allWear(engine, ALL_WEAR, { work: workInWorker, signal: stop.signal, report: ({ step }) => { steps.push(step); } });
  let at = 0;
  setTimeout(() => { at = performance.now(); stop.abort(new Error("called off")); }, after);
  await answer.then(() => { throw new Error("the answer came before the cancel"); }, () => undefined);
  return { took: performance.now() - at, steps };
}

const trial = { demo, grow, inspections, all, advice, cancelled };
guardScripts();
Object.assign(globalThis, { wearTrial: trial });
declare global { var wearTrial: typeof trial; }
