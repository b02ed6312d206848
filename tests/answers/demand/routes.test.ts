import { describe, expect, test } from "vitest";
import { demandBlocks } from "../../../src/answers/demand/demand-blocks.ts";
import type { DemandBlocks, UseBlocks } from "../../../src/answers/demand/demand-blocks.ts";
import { OriginView } from "../../../src/answers/demand/origin-view.ts";
import { routeChoices, together, unevenness } from "../../../src/answers/demand/route-choice.ts";
import { groupView, pastViews, routeScores } from "../../../src/answers/demand/route-scores.ts";
import { expectedByRoute, ROUTES } from "../../../src/answers/demand/routes.ts";
import { smallestCount } from "../../../src/answers/demand/smallest-count.ts";
import { demandQuantile } from "../../../src/stats/negative-binomial.ts";

/** Records of whole blocks: reels and pieces by block, newest first, all planned unless told otherwise. */
function records(tickets: readonly number[], pieces: readonly number[], opening: string | null = "planned"): DemandBlocks {
  const days = Math.ceil(tickets.length / 13 * 365.25 - 1e-9);
  return demandBlocks(
    pieces.map((count, block) => ({ interchange: "g", opening, block, pieces: count, wanted: 0, waiting: 0, squares: count })),
    tickets.map((count, block) => ({ opening, block, tickets: count })), days, 0);
}
const use = (blocks: DemandBlocks) => blocks.use.get("g") as UseBlocks;
const even = (length: number, count: number) => new Array<number>(length).fill(count);
function said(blocks: DemandBlocks, horizon = 28) {
  const view = new OriginView(blocks, 0);
  return expectedByRoute({ view, use: use(blocks), ...groupView(view, use(blocks), 1, null), horizon });
}

describe("expectedByRoute", () => {
  test("says the same by every route of a line used alike in every block, but for the correction of Syntetos and Boylan", () => {
    const routes = said(records(even(26, 40), even(26, 3)));
    for (const route of ROUTES) {
      const a_block = (routes[route].pieces / routes[route].days) * 28;
      expect(Math.abs(a_block - (route === "seldom, corrected" ? 3 * 0.95 : 3))).toBeLessThan(0.02);
      expect(routes[route].factor).toBeCloseTo(1, 2);
    }
  });

  test("from reels: grows with the reels of the last year, half of the growth going on", () => {
    // 26 pieces a year on 520 reels, then on 650: 52 of 1,170 in two years, 650 of them in the last 366 days. The odd day of the
    // older year is not compared: 12 blocks of 50 and 40, √((600 + 20) / (480 + 20)).
    const blocks = records([...even(13, 50), ...even(13, 40)], even(26, 2)), { "from reels": reels } = said(blocks);
    expect((reels.pieces / reels.days) * 366).toBeCloseTo((52 / 1170) * 650, 6);
    expect(reels.factor).toBeCloseTo(Math.sqrt(620 / 500), 2);
  });

  test("from reels: each way of coming in takes its own pieces", () => {
    const both = demandBlocks(
      [...even(26, 1).map((pieces, block) => ({ interchange: "g", opening: "complaint", block, pieces, wanted: 0, waiting: 0, squares: 1 }))],
      even(26, 0).flatMap((_, block) => [{ opening: "planned", block, tickets: 50 }, { opening: "complaint", block, tickets: 10 }]), 731, 0);
    const view = new OriginView(both, 0);
    // All pieces on complaints: 1 a block; their mix leans on the shop's (1 of 6) by five pieces of 31.
    expect(view.mix(use(both))[1]).toBeCloseTo((26 + 5 / 6) / 31, 12);
    expect((said(both)["from reels"].pieces / said(both)["from reels"].days) * 28).toBeCloseTo((13 / 366) * 28, 6);
  });

  test("fading: sees a line die out where the interval of Croston stands still", () => {
    const dead = records(even(26, 40), [...even(6, 0), ...even(20, 1)]), view = new OriginView(dead, 0);
    const routes = expectedByRoute({ view, use: use(dead), ...groupView(view, use(dead), 1, null), end: 26, horizon: 28 });
    const a_block = (route: (typeof ROUTES)[number]) => (routes[route].pieces / routes[route].days) * 28;
    // Teunter, Syntetos & Babai: from 1 it fades by 0.9 a block for six blocks; the odd days of a year make blocks unequal.
    expect(a_block("fading")).toBeCloseTo(0.9 ** 6, 1);
    expect(a_block("seldom")).toBeGreaterThan(0.95);
  });

  test("reads records shorter than a month without inventing pieces", () => {
    const routes = said(demandBlocks([{ interchange: "g", opening: null, block: 0, pieces: 1, wanted: 0, waiting: 0, squares: 1 }], [{ opening: null, block: 0, tickets: 9 }], 10, 0));
    for (const route of ROUTES) expect((routes[route].pieces / routes[route].days) * 10).toBeLessThanOrEqual(1.0001);
  });
});

describe("useChange", () => {
  const changed = (pieces: readonly number[], clump = 1) => {
    const blocks = records(even(pieces.length, 40), pieces), view = new OriginView(blocks, 0);
    return groupView(view, use(blocks), clump, null).change;
  };

  test("finds the block from which a line is used three times as often, and what lies before does not count", () => {
    expect(changed([...even(8, 15), ...even(18, 5)])?.before).toBe(8);
    const blocks = records(even(26, 40), [...even(8, 15), ...even(18, 5)]);
    expect((said(blocks).steady.pieces / said(blocks).steady.days) * 28).toBeCloseTo(15, 0);
  });
  test("of two steps the newer counts", () => expect(changed([...even(5, 30), ...even(8, 12), ...even(20, 3)])?.before).toBe(5));
  test("does not follow what chance can do, nor one block, nor clumps", () => {
    expect(changed([...even(8, 3), ...even(18, 2)])).toBeNull();
    expect(changed([20, ...even(25, 4)])).toBeNull();
    expect(changed([...even(3, 8), ...even(23, 3)], 4)).toBeNull();
  });
  test("a habit the owner dated cuts the past even where counts show nothing", () => {
    const blocks = records(even(26, 40), even(26, 4)), view = new OriginView(blocks, 0);
    expect([6, 1, null].map((ruled) => groupView(view, use(blocks), 1, ruled).end)).toEqual([6, 26, 26]);
  });
});

describe("routeScores", () => {
  test("scores each route on thirteen looks back, none of which knows what came after", () => {
    const pieces = even(39, 4), blocks = records(even(39, 40), pieces), asked = { target: 0.95, horizon: 28, clump: 1, ruled: null };
    const scores = routeScores(pastViews(blocks), { ...asked, use: use(blocks) }, 100);
    expect(scores.origins).toBe(13);
    // Every look back expects four and keeps the same level: the loss is 0.05 a piece too many.
    const { mean = 0, size = 0 } = scores.looks[0]?.expected.steady ?? {};
    expect(mean).toBeCloseTo(4, 0);
    expect(scores.losses.steady / 13).toBeCloseTo(0.05 * (smallestCount(0.95, { mean, size }) - 4), 1);
    const later = records(even(39, 40), pieces.map((count, block) => (block < 5 ? 40 : count)));
    expect(routeScores(pastViews(later), { ...asked, use: use(later) }, 100).looks[5]?.expected).toEqual(scores.looks[5]?.expected);
  });
});

describe("routeChoices", () => {
  const losses = (...all: number[]) => Object.fromEntries(ROUTES.map((route, i) => [route, all[i] ?? 0])) as Record<(typeof ROUTES)[number], number>;
  const score = (origins: number, ...all: number[]) => ({ origins, losses: losses(...all), looks: [] });

  test("takes the least loss, leaning on what all groups say", () => {
    const { choices, others } = routeChoices([score(13, 10, 10, 10, 10, 1), score(13, 10, 10, 10, 10, 1), score(13, 9, 10, 10, 10, 9.5)]);
    expect(choices.map((one) => one.routes)).toEqual([["from reels"], ["from reels"], ["from reels"]]);
    expect(others).toEqual({ routes: ["from reels"], looks: 0, losses: null });
  });
  test("averages two that are as good", () => expect(routeChoices([score(13, 10, 20, 20, 20, 10.1)]).choices[0]?.routes).toEqual(["steady", "from reels"]));
  test("compares nothing on fewer than four looks", () => expect(routeChoices([score(3, 9, 1, 1, 1, 1)]).choices[0]).toEqual({ routes: ["steady"], looks: 0, losses: null }));
});

describe("together", () => {
  test("expects the mean of both", () => {
    const both = together([{ pieces: 10, days: 100, factor: 1 }, { pieces: 20, days: 100, factor: 1.5 }]);
    expect((both.pieces / both.days) * both.factor).toBeCloseTo((0.1 + 0.3) / 2, 12);
  });
});

describe("unevenness", () => {
  test("is what the past missed beyond chance, within its limits", () => {
    const expected = Object.fromEntries(ROUTES.map((route) => [route, { mean: 10, size: 1 / 0.05 }])) as never;
    const looks = (...came: number[]) => ({ origins: came.length, losses: {} as never, looks: came.map((one) => ({ came: one, expected })) });
    const choice = { routes: ["steady" as const], looks: 2, losses: null };
    // Misses of 6: 36 − (10 + 5) + 5 = 26 a look, over 100: 0.26. Without a miss the lower limit stands.
    expect(unevenness([looks(4, 16)], [choice])).toBeCloseTo(0.26, 12);
    expect(unevenness([looks(10, 10)], [choice])).toBe(0.02);
    expect(unevenness([], [])).toBe(0.05);
  });
});

describe("smallestCount", () => {
  test("is the quantile of the negative binomial", () => {
    for (const mean of [0, 0.01, 0.7, 3, 40, 900]) for (const size of [0.4, 3, 80]) for (const target of [0.8, 0.95, 0.99]) {
      expect(smallestCount(target, { mean, size })).toBe(demandQuantile(target, { mean, size }));
    }
  });
});
