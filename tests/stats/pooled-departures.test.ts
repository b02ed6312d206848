import { describe, expect, test } from "vitest";
import { pooledDepartures } from "../../src/stats/pooled-departures.ts";

const seen = (mean: number, se: number) => (at: number) => -0.5 * ((at - mean) / se) ** 2;

describe("pooledDepartures", () => {
  test("with normal likelihoods a group lies where the normal–normal model puts it, averaged over the spread", () => {
    // By hand for one spread s: mean · s²/(s² + se²); eight alike groups at ±1 with se 0.1 leave a spread near 1, so hardly any pull.
    const groups = Array.from({ length: 8 }, (_, i) => seen(i % 2 === 0 ? 1 : -1, 0.1)), { status, spread, groups: found } = pooledDepartures(groups);
    expect([status, spread > 0.6]).toEqual(["fitted", true]);
    expect(found[0]?.value).toBeCloseTo(0.99, 1);
    expect([found[0]?.low, found[0]?.high].map((one) => Math.abs((one as number) - 0.99))).toEqual([expect.closeTo(0.195, 1), expect.closeTo(0.195, 1)]);
  });

  test("groups that differ no more than chance are drawn together, and the status says so", () => {
    const { status, groups } = pooledDepartures([0.1, -0.1, 0.05, -0.05, 0].map((mean) => seen(mean, 0.5)));
    expect(status).toBe("no difference between groups");
    expect(groups.every(({ value }) => Math.abs(value) < 0.05)).toBe(true);
  });

  test("a group that says only that it is not worse is drawn to the others, with a limit on that side", () => {
    const { groups: [free] } = pooledDepartures([(at) => -5 * Math.exp(-1.5 * at), ...[0.3, -0.3, 0.2, -0.2].map((mean) => seen(mean, 0.1))]);
    expect(free?.value).toBeGreaterThan(0);
    expect([Number.isFinite(free?.low), Number.isFinite(free?.high), (free?.low ?? 0) > -0.6]).toEqual([true, true, true]);
  });

  test("no group at all is refused", () => expect(() => pooledDepartures([])).toThrow("pooledDepartures: groups must not be empty"));
});
