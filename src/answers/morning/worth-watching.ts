import type { Engine } from "../../db/engine.ts";
import type { ComebackRow } from "../comebacks/comeback.ts";
import { comebacks } from "../comebacks/comebacks.ts";
import { ALL_VERDICTS, failureVerdicts } from "../failures/failure-verdicts.ts";
import type { VerdictFilter } from "../failures/verdict-records.ts";
import type { Verdict } from "../failures/verdict.ts";
import { EVERYTHING } from "../filter.ts";
import type { Lots, LotRow } from "../lots/lot.ts";
import { lots } from "../lots/lots.ts";
import { modelName } from "../model-name.ts";
import type { WorkMeans } from "../worker-work.ts";
import type { NamedThing } from "./last-look.ts";

/** What to keep an eye on at the counter and the bench. */
export interface Watch {
  /** Parts of a model or series that stand out, dearest first. */
  readonly out: readonly Verdict[];
  /** Parts worse than most of which it is not yet sure. */
  readonly unsure: number;
  /** Lots that fail early, the surest first. */
  readonly lots: readonly LotRow[];
  /** The part whose comebacks cost most, over all models; null where none came back. */
  readonly comeback: ComebackRow | null;
  readonly within_days: number;
}

/** Where the slow work is done: workers in the browser. */
export interface WatchWays {
  readonly verdicts: (engine: Engine, filter: VerdictFilter, means: WorkMeans) => Promise<readonly Verdict[]>;
  readonly lots: (engine: Engine, means: WorkMeans) => Promise<Lots>;
}

/** All on this thread: in Node and in tests. */
export const WATCH_HERE: WatchWays = {
  verdicts: (engine, filter, { signal, report }) => failureVerdicts(engine, filter, signal, { report }),
  lots: (engine, { signal, report }) => lots(engine, signal, { report }),
};

const SUSPECT: readonly LotRow["verdict"][] = ["bad batch", "perhaps, not yet sure"];

/** Models, parts and lots to watch, one count after the other so that the page keeps a core. */
export async function worthWatching(engine: Engine, ways: WatchWays, means: WorkMeans = {}): Promise<Watch> {
  const verdicts = await ways.verdicts(engine, ALL_VERDICTS, means), scanned = await ways.lots(engine, means);
  const back = await comebacks(engine, { ...EVERYTHING, group: null, position: null, watched_until: "records end", curves: false }, means.signal);
  return {
    out: verdicts.filter(({ word }) => word === "stands out"), unsure: verdicts.filter(({ word }) => word === "worse than most, not yet sure").length,
    lots: scanned.rows.filter(({ verdict }) => SUSPECT.includes(verdict)),
    comeback: back.rows.find(({ model, back: again }) => model === "*" && again > 0) ?? null, within_days: back.within_days,
  };
}

/** What stands out by name, to tell next time what is new. */
export function watchedNames({ out, lots: suspect }: Pick<Watch, "out" | "lots">): NamedThing[] {
  return [
    ...out.map((one) => ({ key: JSON.stringify([one.position, one.maker, one.model]), name: `${one.position_name} on ${modelName(one)}` })),
    ...suspect.map(({ size_or_part, supplier, from }) => ({ key: JSON.stringify([size_or_part, supplier, from.slice(0, 4)]), name: `${size_or_part}${supplier === null ? "" : ` from ${supplier}`}` })),
  ];
}
