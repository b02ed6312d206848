import { join } from "node:path";
import { openApp } from "../browser/harness.ts";
import { builtPage } from "../browser/pages/built.ts";
import type { WearTime } from "./wear-page/page.ts";

/** How long the owner waits for Salt & wear in the browser; milliseconds. */
export interface WearTimes {
  readonly demo_inspections: number;
  /** All positions of the demo, when first asked and when asked again. */
  readonly demo_first: WearTime;
  readonly demo_again: WearTime;
  /** When should a spinning reel come in, and a reel of one model. */
  readonly advice: WearTime;
  readonly advice_model: WearTime;
  readonly inspections: number;
  readonly first: WearTime;
  readonly again: WearTime;
  /** From a cancel while parts are being followed to the answer's end. */
  readonly cancel: number;
}

/**
 * Opens a page of trials with the demo in it, asks, grows the demo to at least `enough` inspections, and asks again.
 *
 * @throws {Error} when a cancelled answer came all the same
 */
export async function wearTimes(enough: number): Promise<WearTimes> {
  const built = await builtPage(join(import.meta.dirname, "wear-page"));
  try {
    const app = await openApp({ folder: built.folder });
    await app.page.waitForFunction(() => "wearTrial" in globalThis);
    const times = await app.page.evaluate(async (wanted) => {
      const engine = await wearTrial.demo(), demo_inspections = await wearTrial.inspections(engine);
      const demo = { demo_first: await wearTrial.all(engine), demo_again: await wearTrial.all(engine), advice: await wearTrial.advice(engine, null), advice_model: await wearTrial.advice(engine, "Whinbeck 40") };
      await wearTrial.grow(engine, Math.ceil(wanted / demo_inspections));
      const inspections = await wearTrial.inspections(engine), { took: cancel } = await wearTrial.cancelled(engine, 200);
      const many = { inspections, first: await wearTrial.all(engine), again: await wearTrial.all(engine), cancel };
      await engine.close();
      return { demo_inspections, ...demo, ...many };
    }, enough);
    app.expectClean();
    await app.close();
    return times;
  } finally {
    built.remove();
  }
}
