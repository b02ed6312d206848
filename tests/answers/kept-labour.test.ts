import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EVERYTHING } from "../../src/answers/filter.ts";
import type { RecordsFilter } from "../../src/answers/filter.ts";
import { keepIn } from "../../src/answers/kept-desk.ts";
import { KeptLabour } from "../../src/answers/labour/ask-kept-labour.ts";
import { NO_RATES } from "../../src/answers/labour/bench-rates.ts";
import { KEPT_LABOUR } from "../../src/answers/labour/kept-labour.ts";
import { labourPage } from "../../src/answers/labour/labour-page.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

/** A worker in this thread, joined to its page by copied messages. */
function started(): Worker {
  const { port1, port2 } = new MessageChannel();
  port1.start();
  port2.start();
  keepIn(port2 as unknown as DedicatedWorkerGlobalScope, KEPT_LABOUR);
  return Object.assign(port1, { terminate: () => { port1.close(); port2.close(); } }) as unknown as Worker;
}

let engine: Engine;
const kept = new KeptLabour(started);
beforeAll(async () => { engine = await openDemo(); }, 60_000);
afterAll(async () => {
  kept.forget();
  await engine.close();
});

describe("jobs kept in a worker answer as the engine does", () => {
  const FILTERS: readonly Partial<RecordsFilter>[] = [
    {}, { reel_kind: "spinning" }, { reel_kind: "fly" }, { reel_kind: "conventional", from: "2023-06-15" }, { from: "2024-01-01", to: "2024-12-31" }, { to: "2021-03-31" }, { reel_kind: "other" }, { from: "2031-01-01" },
  ];

  test.each(FILTERS)("times, money, what goes with longer jobs, and changes: %o", async (some) => {
    const filter: RecordsFilter = { ...EVERYTHING, ...some }, rates = { ...NO_RATES, hour_price: 54, hour_cost: 31 };
    const { longer, drifts, ...times } = await labourPage(engine, filter, rates);
    expect(await kept.times(engine, 1, filter, rates, {})).toEqual(times);
    expect(await kept.changes(engine, 1, filter, {})).toEqual({ longer, drifts });
  });

  test("a filter that the kept jobs do not know is refused, rather than forgotten", async () => {
    await expect(kept.times(engine, 1, { ...EVERYTHING, water: "salt" }, NO_RATES, {})).rejects.toThrow("jobsFrom: needs a filter of kind and days alone, got salt");
  });

  test("records that have changed are asked for anew, and a cancel ends the answer with its reason", async () => {
    const before = await kept.times(engine, 1, EVERYTHING, NO_RATES, {}), stop = new AbortController();
    const asked = kept.times(engine, 2, EVERYTHING, NO_RATES, { signal: stop.signal });
    stop.abort(new Error("called off"));
    await expect(asked).rejects.toThrow("called off");
    await engine.run(["-- Fewer tickets.\ndelete from visits where received_on >= date '2025-01-01'"]);
    const { labour: { tickets } } = await kept.times(engine, 3, EVERYTHING, NO_RATES, {});
    expect(tickets).toBeLessThan(before.labour.tickets);
    expect(tickets).toBeGreaterThan(0);
  });
});
