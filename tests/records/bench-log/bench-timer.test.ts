import { describe, expect, test } from "vitest";
import { benchMinutes, gapOf, NO_TIME, started, stopped, timerFrom, timerText, withoutGap } from "../../../src/records/bench-log/bench-timer.ts";

const MIN = 60_000, T = 1_700_000_000_000;

describe("the bench timer", () => {
  test("adds up its spans and the one that runs, over any reload", () => {
    const first = stopped(started(NO_TIME, T), T + 10 * MIN), again = started(first, T + 60 * MIN);
    expect(benchMinutes(timerFrom(timerText(again)), T + 65 * MIN)).toBe(15);
  });

  test("started twice runs once", () => {
    expect(started(started(NO_TIME, T), T + MIN)).toEqual({ spans: [], since: T });
  });

  test("has no gap while the page says every half minute that it is there", () => {
    expect(gapOf(started(NO_TIME, T), T + 40 * MIN, T + 40.5 * MIN)).toBeNull();
    expect(gapOf(NO_TIME, T, T + 400 * MIN)).toBeNull();
  });

  test("has a gap over the night the tablet slept, and can leave it out", () => {
    const timer = started(NO_TIME, T), gap = gapOf(timer, T + 20 * MIN, T + 900 * MIN);
    expect(gap).toEqual({ from: T + 20 * MIN, to: T + 900 * MIN });
    if (gap) expect(benchMinutes(withoutGap(timer, gap), T + 905 * MIN)).toBe(25);
  });

  test("has a gap from its start when the page never said that it was there", () => {
    expect(gapOf(started(NO_TIME, T), null, T + 6 * MIN)).toEqual({ from: T, to: T + 6 * MIN });
  });

  test("never counts minutes below nothing when the computer's clock is put back", () => {
    const timer = started(NO_TIME, T), gap = gapOf(timer, T + 10 * MIN, T - 60 * MIN);
    expect([benchMinutes(timer, T - 60 * MIN), gap]).toEqual([0, { from: T + 10 * MIN, to: T - 60 * MIN }]);
    if (gap) expect(benchMinutes(withoutGap(timer, gap), T - 55 * MIN)).toBe(15);
  });

  test.each(["", "null", "{}", '{"spans":[[1,"x"]],"since":"y"}'])("that cannot be read (%s) never ran", (text) => {
    expect(timerFrom(text)).toEqual(NO_TIME);
  });
});
