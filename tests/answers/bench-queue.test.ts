import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyLine, inShop, workOff } from "../../src/answers/bench-load/queue.ts";
import { simulate } from "../../src/answers/bench-load/simulate.ts";
import type { QueuePlan } from "../../src/answers/bench-load/simulate.ts";

interface Job { arrives: number; minutes: number; wait_days?: number; not_before?: number }

function run(capacity: readonly number[], jobs: readonly Job[]) {
  const line = { ...emptyLine(jobs.length), count: jobs.length }, ready = new Float64Array(jobs.length), left = new Float64Array(capacity.length);
  jobs.forEach((job, at) => { line.arrives[at] = job.arrives; line.minutes[at] = job.minutes; line.wait_days[at] = job.wait_days ?? 0; line.not_before[at] = job.not_before ?? 0; });
  workOff(Float64Array.from(capacity), line, ready, left);
  return { ready: [...ready], left: [...left], inside: [...inShop(capacity.length, line, ready)] };
}

describe("the line at the bench", () => {
  test("jobs are done in the order they came, over days when a day does not hold them", () => {
    // 60 minutes a day: 90 takes day 0 and half of day 1; 30 the rest of day 1; 61 days 2 and 3.
    expect(run([60, 60, 60, 60], [{ arrives: 0, minutes: 90 }, { arrives: 0, minutes: 30 }, { arrives: 2, minutes: 61 }])).toEqual({ ready: [1, 1, 3], left: [60, 0, 1, 0], inside: [2, 0, 1, 0] });
  });
  test("a job that waits for a part is ready when the part has come, and holds up nobody", () => {
    expect(run([60, 60, 60, 60, 60], [{ arrives: 0, minutes: 30, wait_days: 3 }, { arrives: 0, minutes: 30 }, { arrives: 0, minutes: 60, not_before: 4 }])).toMatchObject({ ready: [3, 0, 4], inside: [2, 2, 2, 1, 0] });
  });
  test("closed days work nothing off, and what is not done lies beyond the days", () => {
    expect(run([0, 0, 50], [{ arrives: 0, minutes: 60 }])).toEqual({ ready: [3], left: [60, 60, 10], inside: [1, 1, 1] });
  });

  test("Little's law: reels in the shop, summed over days, are days spent in it, summed over reels, whatever comes", () => {
    // Little 1961, Operations Research 9:383-387; here for every path, as all reels leave.
    const job = fc.record({ arrives: fc.integer({ min: 0, max: 40 }), minutes: fc.integer({ min: 1, max: 200 }), wait_days: fc.integer({ min: 0, max: 20 }), not_before: fc.integer({ min: 0, max: 30 }) });
    fc.assert(fc.property(fc.array(job, { minLength: 1, maxLength: 40 }), fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 41, maxLength: 60 }), (jobs, days) => {
      const some = [...jobs].sort((a, b) => a.arrives - b.arrives), capacity = [...days, ...new Array<number>(120).fill(300)], { ready, inside, left } = run(capacity, some);
      const spent = ready.reduce((sum, at, i) => sum + at - (some[i] as Job).arrives, 0);
      expect(inside.reduce((sum, one) => sum + one, 0)).toBe(spent);
      expect(left.at(-1)).toBe(0);
      // Nobody is opened before somebody who came earlier: the work done by each end of day never exceeds the minutes there were.
      const done = ready.map((at, i) => ({ opened: at - (some[i]?.wait_days ?? 0), minutes: (some[i] as Job).minutes, plain: (some[i]?.wait_days ?? 0) === 0 && at > (some[i]?.not_before ?? 0) }));
      let minutes = 0;
      done.forEach((one) => { minutes += one.minutes; if (one.plain) expect(capacity.slice(0, one.opened + 1).reduce((sum, day) => sum + day, 0)).toBeGreaterThanOrEqual(minutes); });
    }), { numRuns: 200 });
  });
});

/** A shop with steady reels, six days a week, 14 a week, one kind of job. */
function steady(weeks: number, hours_a_week: number): QueuePlan {
  const days = weeks * 7 + 182, share = [1, 2, 3, 4, 5, 6].map((one) => one / 6);
  return {
    weeks: Array.from({ length: weeks }, (_, week) => ({ tickets: { mean: 14, size: Infinity }, days: [0, 1, 2, 3, 4, 5].map((day) => week * 7 + day), shares: share, mix: Float64Array.of(1), wait_times: 1, ends: week * 7 + 6 })),
    capacity: Float64Array.from({ length: days }, (_, day) => (day % 7 === 6 ? 0 : hours_a_week * 10)), jobs: [{ log_mean: Math.log(60), log_sd: 0.3, wait_chance: 0.1 }], waits: [10], overhead_min: 15, open: [], level_sd: 0,
  };
}

describe("the simulation", () => {
  test("Little's law holds between its own figures: reels in the shop are reels a day times the mean wait", async () => {
    const weeks = (await simulate(steady(40, 20), { paths: 400, seed: 7 })).slice(15, 30);
    const inside = weeks.reduce((sum, { in_shop }) => sum + in_shop.mean, 0) / weeks.length, wait = weeks.reduce((sum, week) => sum + (week.wait?.mean ?? NaN), 0) / weeks.length;
    // Reels in the shop are counted on Sunday evening, the mean over the week is a little more: within an eighth.
    expect(Math.abs(inside / ((14 / 7) * wait) - 1)).toBeLessThan(0.125);
  });
  test("a week brings reels times minutes: 14 reels of 60 minutes in the middle, spread 0.3, and 15 beside take 18.2 hours", async () => {
    const [week] = await simulate(steady(4, 20), { paths: 2000, seed: 1 });
    // Mean of the log-normal: 60 exp(0.3²/2) = 62.76; (62.76 + 15) · 14 / 60 = 18.14.
    expect(week?.hours.mean).toBeCloseTo(18.14, 0);
  });
  test("with too few hours the line grows by what is missing every week", async () => {
    const weeks = await simulate(steady(20, 10), { paths: 300, seed: 2 });
    expect(((weeks[19]?.line_hours.mean ?? 0) - (weeks[9]?.line_hours.mean ?? 0)) / 10).toBeCloseTo(18.14 - 10, 0);
  });
  test("the same seed gives the same weeks, another one others", async () => {
    const plan = steady(4, 20), one = await simulate(plan, { paths: 50, seed: 3 });
    expect(await simulate(plan, { paths: 50, seed: 3 })).toEqual(one);
    expect(await simulate(plan, { paths: 50, seed: 4 })).not.toEqual(one);
  });
  test("called off, it rejects with the reason and reports how far it was", async () => {
    const off = new AbortController(), steps: number[] = [];
    const work = simulate(steady(4, 20), { paths: 1000, seed: 1 }, { signal: off.signal, report: ({ done }) => { steps.push(done); if (done >= 200) off.abort(new Error("enough")); } });
    await expect(work).rejects.toThrow("enough");
    expect(steps).toEqual([0, 100, 200]);
  });
});
