import { beforeAll, describe, expect, test } from "vitest";
import { demandByGroup } from "../../src/answers/demand/demand-by-group.ts";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import type { RestockLine } from "../../src/answers/stock/restock-line.ts";
import { stockPast } from "../../src/answers/stock/stock-past.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { fillSeed } from "./seed-shop.ts";
import { meanOf, outcomes } from "./stock-outcome.ts";
import type { Outcome } from "./stock-outcome.ts";

const TODAY = "2026-01-05";
/** The planted truths are looked for in eight shops of other seeds than the demo's, the calibration in twenty. */
const SEEDS = Array.from({ length: 20 }, (_, i) => i + 1), PLANTED = 8;

interface Shop { seed: number; lines: readonly RestockLine[]; bearing: { models: number; top: number; yearly: number } | null; outcomes: Outcome[] }
let shops: Shop[];

beforeAll(async () => {
  const engine = await openNodeEngine();
  shops = [];
  for (const seed of SEEDS) {
    await fillSeed(engine, seed);
    const planted = seed <= PLANTED, { groups, months } = planted ? await demandByGroup(engine, EVERYTHING) : { groups: [], months: 1 };
    const bearing = groups.find((group) => group.interchange === "bearing 7x11x3 sealed");
    shops.push({
      seed, lines: planted ? (await restock(engine, { as_of: TODAY })).lines : [], outcomes: outcomes(await stockPast(engine, TODAY), 56),
      bearing: bearing ? { models: bearing.models, top: bearing.top_model_share, yearly: (bearing.pieces / months) * 12 } : null,
    });
  }
  await engine.close();
}, 600_000);

const line = ({ lines }: Shop, interchange: string) => lines.find((one) => one.interchange === interchange) as RestockLine;
const failing = (holds: (shop: Shop) => boolean) => shops.slice(0, PLANTED).filter((shop) => !holds(shop)).map(({ seed }) => seed);

describe("stock in eight shops", () => {
  test("PT3: the 7x11x3 bearing is one line for nine models, none of which takes two fifths of it", () => {
    expect(failing(({ bearing }) => bearing !== null && bearing.models === 9 && bearing.top <= 0.39 && Math.abs(bearing.yearly - 145) < 35)).toEqual([]);
  });

  test("PT12: assorted lines are refused, every one", () => {
    expect(failing(({ lines }) => {
      const mixed = lines.filter((one) => one.interchange.endsWith("-MIX"));
      return mixed.length === 8 && mixed.every((one) => one.status === "refused" && one.order_qty === null && one.reorder_point === null);
    })).toEqual([]);
  });

  test.each([["Far Lantern Imports", "bearing 4x7x2.5 sealed", 21, 34], ["Zetfield Parts Agency", "ARC-WB40", 18, 24]])("PT13: %s comes later than it quotes, and the days it takes are used", (supplier, part, quoted, truth) => {
    expect(failing((shop) => {
      const { lead, supplier: from } = line(shop, part);
      return from === supplier && lead.source === "observed" && lead.quoted_days === quoted && Math.abs(lead.days - truth) < 8 && (lead.late_share ?? 0) > 0.5;
    })).toEqual([]);
  });

  test("PT14: 63 pieces of 7x13x4 lie dead: nothing is ordered, and they last for decades", () => {
    expect(failing((shop) => {
      const dead = line(shop, "bearing 7x13x4 sealed");
      return dead.status === "enough" && dead.order_qty === 0 && dead.on_hand === 63 && (dead.cover_years === null || dead.cover_years > 15);
    })).toEqual([]);
  });

  test("PT10: the seal's new habit is seen as a step within two months of July 2024, and planned on the time since", () => {
    expect(failing((shop) => {
      const { changed_on } = line(shop, "O-ring AS568-014 NBR 70");
      return changed_on !== null && changed_on >= "2024-05-01" && changed_on <= "2024-09-01";
    })).toEqual([]);
  });
});

describe("calibration over twenty shops", () => {
  const lasted = (shop: Shop, part_class: string) => meanOf(shop.outcomes.filter((one) => one.part_class === part_class).map((one) => one.lasted));

  // Whole pieces overshoot: a single shop looked at on twelve days may come out above 98 %.
  test("class A shelves last within three points of the 95 % they are meant to, and in no shop under 92 %", () => {
    expect(Math.abs(meanOf(shops.map((shop) => lasted(shop, "A"))) - 0.95)).toBeLessThanOrEqual(0.03);
    expect(shops.filter((shop) => lasted(shop, "A") < 0.92).map(({ seed }) => seed)).toEqual([]);
  });

  test("class B shelves last within three points of their 90 % over all shops", () =>
    expect(Math.abs(meanOf(shops.map((shop) => lasted(shop, "B"))) - 0.9)).toBeLessThanOrEqual(0.03));
});
