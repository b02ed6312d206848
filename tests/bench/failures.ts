import { join } from "node:path";
import { openApp } from "../browser/harness.ts";
import { builtPage } from "../browser/pages/built.ts";
import type { VerdictTime } from "./failures-page/page.ts";

/** How long the owner waits for Failures in the browser, with many inspections; milliseconds. */
export interface FailureTimes {
  readonly inspections: number;
  /** Shares of all parts on all models, planned services: the first thing the room shows. */
  readonly shares: number;
  /** All verdicts, when first asked and when asked again. */
  readonly first: VerdictTime;
  readonly again: VerdictTime;
  /** Bad batches; one part's comebacks with their curve. */
  readonly batches: number;
  readonly back: number;
  /** From a cancel to the answer's end, while counting and while judging. */
  readonly cancel_counting: number;
  readonly cancel_judging: number;
}

/**
 * Opens a page of trials with the demo in it, grows it to at least `enough` inspections, and asks what the room asks.
 *
 * @throws {Error} when a cancelled answer came all the same, or told no step
 */
export async function failureTimes(enough: number): Promise<FailureTimes> {
  const built = await builtPage(join(import.meta.dirname, "failures-page"));
  try {
    const app = await openApp({ folder: built.folder });
    await app.page.waitForFunction(() => "failureTrial" in globalThis);
    const times = await app.page.evaluate(async (wanted) => {
      const engine = await failureTrial.demo();
      await failureTrial.grow(engine, Math.ceil(wanted / await failureTrial.inspections(engine)));
      const inspections = await failureTrial.inspections(engine), shares = await failureTrial.shares(engine);
      const first = await failureTrial.verdicts(engine), again = await failureTrial.verdicts(engine);
      const batches = await failureTrial.batches(engine), back = await failureTrial.back(engine);
      const counting = await failureTrial.cancelled(engine, 40), judging = await failureTrial.cancelled(engine, again.counting + again.judging / 2);
      await engine.close();
      if (counting.steps.length === 0 || judging.steps.length < 4) throw new Error(`Too few steps were told: ${counting.steps.join(", ")}; ${judging.steps.join(", ")}`);
      return { inspections, shares, first, again, batches, back, cancel_counting: counting.took, cancel_judging: judging.took };
    }, enough);
    app.expectClean();
    await app.close();
    return times;
  } finally {
    built.remove();
  }
}
