import type { Engine } from "../../db/engine.ts";
import { packedRows } from "../../db/packed-rows.ts";
import jobPartsSql from "../budget/job-parts.sql?raw";
import { restock } from "../stock/restock.ts";
import type { RestockSettings } from "../stock/restock-line.ts";
import { stockPast } from "../stock/stock-past.ts";
import type { PlainWork, WorkMeans } from "../worker-work.ts";
import ordersSql from "./orders.sql?raw";
import { replayOf } from "./replay-of.ts";
import type { PackedReplay, PastOrder, Replay } from "./replay.ts";
import waitsSql from "./waits.sql?raw";

export type ReplayWork = PlainWork<PackedReplay, Replay>;

type Settings = Partial<RestockSettings> & Pick<RestockSettings, "as_of">;

/** Everything a replay is made from, nothing of it later than `as_of`. */
export async function replayRecords(engine: Engine, given: Settings, signal?: AbortSignal): Promise<PackedReplay> {
  const { as_of } = given, { lines, settings } = await restock(engine, given, signal), past = await stockPast(engine, as_of, signal);
  const parts = await packedRows(engine, jobPartsSql, { to_date: as_of }, signal), orders = await engine.rows<PastOrder>(ordersSql, { to_date: as_of }, signal);
  return { settings, lines, past, parts, orders, waits: await packedRows(engine, waitsSql, { to_date: as_of }, signal) };
}

/** The advice scored on the shop's own past; `work`: where it is done, `replayInWorker` in the browser. */
export async function askReplay(engine: Engine, given: Settings, { work = replayOf, ...means }: WorkMeans & { readonly work?: ReplayWork } = {}): Promise<Replay> {
  return work(await replayRecords(engine, given, means.signal), means);
}
