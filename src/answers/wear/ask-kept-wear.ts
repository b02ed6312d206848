import type { Engine } from "../../db/engine.ts";
import { packedRows } from "../../db/packed-rows.ts";
import placesSql from "../failures/places.sql?raw";
import { filterValues } from "../filter.ts";
import { KeptWorker } from "../kept-worker.ts";
import { SharedWork } from "../shared-work.ts";
import type { WorkMeans } from "../worker-work.ts";
import type { Advice, AdviceQuestion } from "./advice.ts";
import { daysClock, yearOf } from "./advice-records.ts";
import type { PartCost } from "./advice-records.ts";
import costsSql from "./costs.sql?raw";
import { followParts } from "./follow-parts.ts";
import gradesSql from "./grades.sql?raw";
import keptLinesSql from "./kept-lines.sql?raw";
import { linesName } from "./kept-lines.ts";
import type { AboutWear, AskedKeptWear } from "./kept-wear.ts";
import linkedSql from "./linked.sql?raw";
import placeOfSql from "./place-of.sql?raw";
import type { GradeRow, PlaceName } from "./wear-records.ts";
import { CLOCKS } from "./wear.ts";
import type { Clock, Wear, WearBeside, WearCurve, WearFilter, WearRow } from "./wear.ts";

/** The curve that the owner looks at goes before the list, and what stands beside it after all. */
const FIRST = 0, NEXT = 1, LAST = 2;

async function aboutWear(engine: Engine, signal: AbortSignal): Promise<AboutWear> {
  const places = await engine.rows<PlaceName>(placesSql, {}, signal), costs = await engine.rows<PartCost>(costsSql, {}, signal);
  const [about] = await engine.rows<{ visits: number; linked: number; contradicting: number }>(linkedSql, {}, signal);
  return { places, costs, visits: about?.visits ?? 0, linked_visits: about?.linked ?? 0, contradicting_months: about?.contradicting ?? 0 };
}

/**
 * Salt & wear as its room asks for it: the lines of a clock are counted once for each state of the records and kept in a worker, so that
 * a changed filter asks the engine next to nothing. The answers are those of `ask-wear.ts`.
 */
export class KeptWear {
  readonly #worker: KeptWorker<AskedKeptWear>;
  #about = new SharedWork<AboutWear>();
  #state: readonly unknown[] = [];

  constructor(started: () => Worker) { this.#worker = new KeptWorker(started); }

  /** How long every position lasts, the soonest first. @throws the signal's reason when called off, as all of these */
  async wear(engine: Engine, version: number, filter: WearFilter, means: WorkMeans): Promise<Wear> {
    const about = await this.#ready(engine, version, [filter.clock], means);
    return this.#worker.ask<Wear>({ kind: "wear", filter, about }, means, NEXT);
  }

  /** The picture of one position. */
  async curve(engine: Engine, version: number, filter: WearFilter, position: string, means: WorkMeans): Promise<WearCurve> {
    const about = await this.#ready(engine, version, [filter.clock], means);
    return this.#worker.ask<WearCurve>({ kind: "curve", filter, position, about }, means, FIRST);
  }

  /** What stands beside the picture of one position. */
  async beside(engine: Engine, version: number, filter: WearFilter, overall: WearRow, means: WorkMeans): Promise<WearBeside> {
    const about = await this.#ready(engine, version, [filter.clock], means), { signal } = means, { position } = overall;
    const [numbered] = await engine.rows<{ place: number }>(placeOfSql, { position }, signal);
    const grades = await engine.rows<GradeRow>(gradesSql, { ...filterValues(filter), clock: filter.clock, place: numbered?.place ?? null }, signal);
    const answer = await this.#worker.ask<WearBeside>({ kind: "beside", filter, position, overall, grades, about }, means, LAST);
    // All that was asked for stands: the other clocks are counted before somebody asks for them. A fault comes again, and is told, when one does.
    for (const clock of CLOCKS) void this.#hold(engine, clock, {}).catch(() => undefined);
    return answer;
  }

  /** When a reel should come in. */
  async advice(engine: Engine, version: number, question: AdviceQuestion, means: WorkMeans): Promise<Advice> {
    const about = await this.#ready(engine, version, [daysClock(question), "months"], means), year = await yearOf(engine, question, means.signal);
    return this.#worker.ask<Advice>({ kind: "advice", question, year, about }, means, NEXT);
  }

  /** Ends the worker with everything it keeps. */
  forget(): void { this.#worker.inState(); }

  #hold(engine: Engine, clock: Clock, { signal, report }: WorkMeans): Promise<void> {
    return this.#worker.hold(linesName(clock), async (stop) => {
      await followParts(engine, { signal: stop, report });
      return packedRows(engine, keptLinesSql, { clock }, stop);
    }, signal);
  }

  /** Sees that the worker keeps the lines of these clocks, of the records as they are now. */
  async #ready(engine: Engine, version: number, clocks: readonly Clock[], { signal, report }: WorkMeans): Promise<AboutWear> {
    if (this.#state[0] !== engine || this.#state[1] !== version) [this.#state, this.#about] = [[engine, version], new SharedWork()];
    this.#worker.inState(engine, version);
    const about = this.#about;
    for (const clock of clocks) await this.#hold(engine, clock, { signal, report });
    return about.of("about", (stop) => aboutWear(engine, stop), signal);
  }
}

/** The one of the page. */
export const keptWear = new KeptWear(() => new Worker(new URL("./kept-wear.worker.ts", import.meta.url), { type: "module", name: "kept wear" }));
