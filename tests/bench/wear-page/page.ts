import { prepareAnswers } from "../../../src/answers/prepare.ts";
import { advise, allWear } from "../../../src/answers/wear/ask-wear.ts";
import { ALL_WEAR } from "../../../src/answers/wear/wear-records.ts";
import type { DoWork } from "../../../src/answers/wear/wear-messages.ts";
import { workInWorker } from "../../../src/answers/wear/work-in-worker.ts";
import type { Engine } from "../../../src/db/engine.ts";
import { openBrowserEngine } from "../../../src/db/open-browser.ts";
import { derive, prepareSchema } from "../../../src/db/prepare.ts";
import { importFiles } from "../../../src/records/importing.ts";
import { openMemoryLedger } from "../../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../../src/records/load-vocabulary.ts";
import { guardScripts } from "../../../src/ui/own-scripts.ts";

const DEMO = import.meta.glob<string>("../../../data/demo/*.csv", { query: "?raw", import: "default", eager: true });

/** Milliseconds of one answer: counting in the engine, fitting in the worker, both. */
export interface WearTime { counting: number; fitting: number; whole: number }

/** The demo shop in the browser's engine. */
async function demo(): Promise<Engine> {
  const engine = await openBrowserEngine();
  await prepareSchema(engine);
  await loadVocabulary(engine);
  const files = Object.entries(DEMO).map(([path, text]) => ({ name: path.replace(/^.*\//, ""), blob: new Blob([text]) }));
  await importFiles(files, { engine, ledger: openMemoryLedger(), today: "2026-01-05", origin: "demo" });
  await prepareAnswers(engine);
  return engine;
}

/** The records again and again, each round on reels of its own that were fished a little more. */
async function grow(engine: Engine, rounds: number): Promise<void> {
  const more = (table: string, own: string) =>
    `insert into ledger.${table} by name select * exclude (n) replace (${own}) from ledger.${table} cross join range(1, ${rounds}) as rounds(n)`;
  await engine.run([
    more("tickets", "ticket_no || '-' || n as ticket_no, serial || '-' || n as serial, salt_days + n % 4 as salt_days, use_days + n % 4 as use_days"),
    more("findings", "ticket_no || '-' || n as ticket_no"),
  ]);
  await derive(engine);
  await prepareAnswers(engine);
}

async function inspections(engine: Engine): Promise<number> {
  const [found] = await engine.rows<{ n: number }>("select count(*) as n from inspected where counted or written order by n");
  return found?.n ?? 0;
}

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
