import { filterValues, EVERYTHING } from "../../src/answers/filter.ts";
import byMonthSql from "../../src/answers/demand/by-month.sql?raw";
import { ALL_FAILURES } from "../../src/answers/failures/failure-rates.ts";
import countsSql from "../../src/answers/failures/counts.sql?raw";
import { failureValues } from "../../src/answers/failures/failure-values.ts";
import { followParts } from "../../src/answers/wear/follow-parts.ts";
import workSql from "../../src/answers/labour/work.sql?raw";
import type { Engine, Row } from "../../src/db/engine.ts";
import { openNativeEngine } from "../../src/db/open-native.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { median } from "./median.ts";
import { derivingTime, fill } from "./shop-streams.ts";
import type { ShopStreams } from "./shop-streams.ts";

/** The same work in the engine of the browser, in native DuckDB with one thread, and where it is one loop in JavaScript over arrays; milliseconds. */
export interface SideBySide { readonly what: string; readonly ours: number; readonly native: number | null; readonly loop: number | null }

const COUNTED = `-- Every inspection with its model, for a loop.
-- Columns: model integer, place integer, taken boolean, failed boolean
select dense_rank() over (order by v.maker, v.model)::integer as model, i.place::integer as place, i.counted as taken, i.failed
from inspected i
join visits v using (visit)
order by i.visit, i.place`;

const STATEMENTS: readonly { what: string; sql: string; values: Row }[] = [
  { what: "Shares of all parts on all models", sql: countsSql, values: failureValues(ALL_FAILURES) },
  { what: "Pieces used by part and month", sql: byMonthSql, values: { interchange: null, ...filterValues(EVERYTHING) } },
  { what: "Every job with its minutes, parts and charge", sql: workSql, values: filterValues(EVERYTHING) },
];

/** Arrays as a program without an engine would keep them, counted by one loop; the counts must be the engine's. */
async function looped(engine: Engine, runs: number): Promise<number> {
  const rows = await engine.columns(COUNTED), model = Int32Array.from(rows["model"] as number[]), place = Int32Array.from(rows["place"] as number[]);
  const taken = Uint8Array.from(rows["taken"] as boolean[], Number), failed = Uint8Array.from(rows["failed"] as boolean[], Number), times: number[] = [];
  const places = 1 + place.reduce((most, one) => Math.max(most, one), 0), models = 1 + model.reduce((most, one) => Math.max(most, one), 0);
  let sum = 0;
  for (let run = 0; run < runs; run += 1) {
    const began = performance.now(), inspected = new Int32Array(places * models), bad = new Int32Array(places * models);
    for (let i = 0; i < model.length; i += 1) {
      const at = (place[i] as number) * models + (model[i] as number);
      inspected[at] = (inspected[at] as number) + (taken[i] as number);
      bad[at] = (bad[at] as number) + (taken[i] as number) * (failed[i] as number);
    }
    times.push(performance.now() - began);
    sum = inspected.reduce((all, one) => all + one, 0);
  }
  const asked = (await engine.rows<{ inspected: number }>(countsSql, failureValues(ALL_FAILURES))).reduce((all, one) => all + one.inspected, 0);
  if (asked !== sum) throw new Error(`The loop counted ${sum} inspections, the engine ${asked}.`);
  return median(times);
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}

async function derivedAgain(ours: Engine, native: Engine | null, runs: number): Promise<Pick<SideBySide, "ours" | "native">> {
  const times: { ours: number[]; native: number[] } = { ours: [], native: [] };
  for (let run = 0; run < runs; run += 1) {
    times.ours.push(await derivingTime(ours));
    if (native) times.native.push(await derivingTime(native));
  }
  return { ours: median(times.ours), native: native ? median(times.native) : null };
}

/**
 * Loads one shop into both engines and asks both the same statements, by turns.
 *
 * @throws {Error} when the two do not give the same number of rows, or the loop other counts
 */
export async function sideBySide(shop: ShopStreams, runs: number): Promise<{ inspections: number; rows: SideBySide[] }> {
  const ours = await openNodeEngine(), native = await openNativeEngine({ threads: 1 });
  try {
    const filled = await fill(ours, shop), beside = native ? await fill(native, shop) : null, rows: SideBySide[] = [
      { what: "Tables from the ledger's streams", ours: filled.loading, native: beside?.loading ?? null, loop: null },
      { what: "Everything derived from them, first after a start", ours: filled.deriving, native: beside?.deriving ?? null, loop: null },
      { what: "– again, as after an import", ...(await derivedAgain(ours, native, runs)), loop: null },
    ];
    const loop = await looped(ours, runs);
    for (const [at, { what, sql, values }] of STATEMENTS.entries()) {
      const times: { ours: number[]; native: number[] } = { ours: [], native: [] };
      for (let run = 0; run < runs; run += 1) {
        times.ours.push(await timed(() => ours.stream(sql, values)));
        if (native) times.native.push(await timed(() => native.stream(sql, values)));
      }
      if (native) {
        const [a, b] = [(await ours.stream(sql, values)).rows, (await native.stream(sql, values)).rows];
        if (a !== b) throw new Error(`${what}: ${a} rows in one engine, ${b} in the other.`);
      }
      rows.push({ what, ours: median(times.ours), native: native ? median(times.native) : null, loop: at === 0 ? loop : null });
    }
    const followed = await timed(() => followParts(ours));
    rows.push({ what: "Every part followed from visit to visit", ours: followed, native: native ? await timed(() => followParts(native)) : null, loop: null });
    const [counted] = await ours.rows<{ n: number }>("-- Inspections.\n-- Columns: n bigint\nselect count(*) as n from inspected where counted or written order by n");
    return { inspections: counted?.n ?? 0, rows };
  } finally {
    await ours.close();
    await native?.close();
  }
}
