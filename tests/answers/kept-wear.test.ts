import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { KeptWear } from "../../src/answers/wear/ask-kept-wear.ts";
import { advise, allWear, wearPage } from "../../src/answers/wear/ask-wear.ts";
import { keepIn } from "../../src/answers/kept-desk.ts";
import { KEPT_WEAR } from "../../src/answers/wear/kept-wear.ts";
import { ALL_WEAR } from "../../src/answers/wear/wear-records.ts";
import type { WearFilter } from "../../src/answers/wear/wear.ts";
import type { AdviceQuestion } from "../../src/answers/wear/advice.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openDemo } from "./demo-shop.ts";

/** A worker in this thread, joined to its page by copied messages. */
function started(): Worker {
  const { port1, port2 } = new MessageChannel();
  port1.start();
  port2.start();
  keepIn(port2 as unknown as DedicatedWorkerGlobalScope, KEPT_WEAR);
  return Object.assign(port1, { terminate: () => { port1.close(); port2.close(); } }) as unknown as Worker;
}

let engine: Engine;
const kept = new KeptWear(started);
beforeAll(async () => { engine = await openDemo(); }, 60_000);
afterAll(async () => {
  kept.forget();
  await engine.close();
});

describe("what is kept in a worker answers as the engine does", () => {
  const FILTERS: readonly Partial<WearFilter>[] = [{}, { clock: "months", reel_kind: "spinning" }, { clock: "use_days", water: "fresh" }, { model: "Whinbeck 40", maker: "Brackhelm" }, { reel_kind: "fly", water: "salt" }];

  test.each(FILTERS)("how long every part lasts, and everything of one part: %o", async (some) => {
    const filter: WearFilter = { ...ALL_WEAR, ...some };
    expect(await kept.wear(engine, 1, filter, {})).toEqual(await allWear(engine, filter));
    const { overall, groups, effects, models, grades, sensitivity, ...picture } = await wearPage(engine, filter, "line_roller_bearing");
    expect(await kept.curve(engine, 1, filter, "line_roller_bearing", {})).toEqual({ overall, ...picture });
    expect(await kept.beside(engine, 1, filter, overall, {})).toEqual({ groups, effects, models, grades, sensitivity });
  });

  const QUESTIONS: readonly Partial<AdviceQuestion>[] = [{}, { reel_kind: "spinning", water: "salt", rinse: "never" }, { reel_kind: "spinning", water: "fresh", risk: 0.2 }, { maker: "Brackhelm", model: "Whinbeck 40", rinse: "always" }];

  test.each(QUESTIONS)("when a reel should come in, asked after others: %o", async (some) => {
    const question: AdviceQuestion = { reel_kind: null, maker: null, model: null, water: null, rinse: null, risk: 0.1, ...some };
    expect(await kept.advice(engine, 1, question, {})).toEqual(await advise(engine, question));
  });

  test("records that have changed are asked for anew", async () => {
    const before = await kept.wear(engine, 1, ALL_WEAR, {});
    await engine.run(["-- Fewer spells.\ndelete from spells where place = (select min(place) from spells)"]);
    expect(await kept.wear(engine, 1, ALL_WEAR, {})).toEqual(before);
    expect((await kept.wear(engine, 2, ALL_WEAR, {})).rows.length).toBe(before.rows.length - 1);
  });
});
