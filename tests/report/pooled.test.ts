import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { labour } from "../../src/answers/labour/labour.ts";
import { dayAfter } from "../../src/answers/days.ts";
import { scanLots } from "../../src/answers/lots/lot-scan.ts";
import type { RefittedRow } from "../../src/answers/lots/lot-shares.ts";
import { lots } from "../../src/answers/lots/lots.ts";
import type { Engine } from "../../src/db/engine.ts";
import type { Imported } from "../../src/records/importing.ts";
import { labourTable } from "../../src/report/labour-table.ts";
import { lotTable } from "../../src/report/lot-table.ts";
import { demandTables } from "../../src/report/shops/demand-tables.ts";
import { KeptShops } from "../../src/report/shops/kept-shop.ts";
import { pooledLabour } from "../../src/report/shops/pooled-labour.ts";
import { pooledLots } from "../../src/report/shops/pooled-lots.ts";
import type { ReportTable } from "../../src/report/table.ts";
import { fill, openShop } from "../answers/shop.ts";
import type { Shop } from "../answers/shop.ts";

const NO_FILES = { files: [], rejects: [] } as unknown as Imported;
const KEPT = "-- Where many shops come together.\ncreate schema if not exists kept";

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

/** One shop after the other, as the report on many shops goes through them; `own` is asked of each before the next. */
async function pooled<Own>(shops: Readonly<Record<string, Shop>>, own: () => Promise<Own>): Promise<Own[]> {
  await engine.run([KEPT]);
  const owns: Own[] = [];
  let kept: KeptShops | null = null;
  for (const [name, shop] of Object.entries(shops)) {
    await fill(engine, shop);
    kept ??= await KeptShops.open(engine);
    await kept.add(name, NO_FILES);
    owns.push(await own());
  }
  return owns;
}

const job = (ticket_no: string, received_on: string, more: Record<string, string | number | null> = {}) => ({
  ticket_no, received_on, finished_on: received_on, maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "full service", came_in: "planned", water: "salt", salt_days: 20, ...more,
});
const without = ({ rows }: ReportTable, ...left_out: string[]) => rows.map((row) => Object.fromEntries(Object.entries(row).filter(([name]) => !left_out.includes(name))));

/** Three reels a month from January to October 2024, each looked at 100 days later: all of May and June failed, and the first of all. */
function batchShop(): Shop {
  const reels = Array.from({ length: 30 }, (_, i) => {
    const month = Math.floor(i / 3), on = `2024-${String(month + 1).padStart(2, "0")}-1${i % 3}`;
    return { i, on, again: dayAfter(on, 100), failed: month === 4 || month === 5 || i === 0 };
  });
  return {
    parts: [{ part_no: "RB-1", name: "Roller bearing", family: "ball bearing", size: "4x7x2.5", supplier: "North" }],
    tickets: reels.flatMap(({ i, on, again }) => [job(`A${i}`, on, { serial: `S${i}`, technician: i % 2 === 0 ? "Ann" : "Ben" }), job(`B${i}`, again, { serial: `S${i}` })]),
    findings: [
      ...reels.map(({ i }) => ({ ticket_no: `A${i}`, position: "line_roller_bearing", action: "replaced", routine: true, qty: 1, part_no: "RB-1", note: i === 12 || i === 15 ? "lot N-7" : null })),
      ...reels.map(({ i, failed }) => ({ ticket_no: `B${i}`, position: "line_roller_bearing", grade: failed ? 4 : 0 })),
    ],
  };
}

describe("bad batches over all shops", () => {
  test("are found where each shop alone has too few, with counts by shop and without a name of a technician", async () => {
    const owns = await pooled({ Alder: batchShop(), Birch: batchShop() }, () => lots(engine)), { rows } = await pooledLots(engine);
    expect(owns.map(({ rows: [own] }) => own?.verdict)).toEqual(["too few", "too few"]);
    // Each shop: 6 of 6 in May and June, 1 of 24 outside. Reels still carrying one: all of the window, nothing was fitted since.
    expect(rows).toEqual([expect.objectContaining({
      size_or_part: "4x7x2.5", supplier: "North", from: "2024-05-01", to: "2024-06-30", fitted: 12, failed_early: 12, expected_share: 1 / 24, verdict: "bad batch", p_value: 1 / 2000,
      shops: "Alder 6 of 6;Birch 6 of 6", technicians: "", lots_written: "N-7", still_carried: 12,
    })]);
    expect(rows[0]?.["reasons"]).toMatch(/Every shop is hit alike \(Alder 6 of 6, Birch 6 of 6\).* 12 reels may still carry one\.$/);
  });

  test("of one shop alone are that shop's own", async () => {
    const twice = batchShop(), both: Shop = { ...twice, tickets: [...twice.tickets ?? [], ...batchShop().tickets?.map((row) => ({ ...row, ticket_no: `2${row["ticket_no"]}`, serial: `2${row["serial"]}` })) ?? []],
      findings: [...twice.findings ?? [], ...batchShop().findings?.map((row) => ({ ...row, ticket_no: `2${row["ticket_no"]}` })) ?? []] };
    const [own] = await pooled({ Alder: both }, () => lots(engine)), together = await pooledLots(engine);
    expect(own?.rows[0]?.verdict).toBe("bad batch");
    expect(without(together, "shops", "technicians", "reasons")).toEqual(without(lotTable(own ?? expect.fail("none")), "shops", "technicians", "reasons"));
  });

  test("are not seen in a shop whose parts always fail sooner and that fitted for two months only", async () => {
    const row = (shop: string, month: number, failed: boolean, fitted: number): RefittedRow => ({
      shop, size_or_part: "x", supplier: null, month, position: "p", maker: null, model: "m", technician: null, fished: 1, soon: true, failed, fitted,
    });
    // Alder: 1 of 10 failed in each of ten months. Birch: 10 of 20 in each of two. Thrown together those two have 22 of 60, all others 8 of 80.
    const months = Array.from({ length: 10 }, (_, month) => month), alder = months.flatMap((month) => [row("Alder", month, true, 1), row("Alder", month, false, 9)]);
    const rows = [...alder, ...[4, 5].flatMap((month) => [row("Birch", month, true, 10), row("Birch", month, false, 10)])].sort((a, b) => a.month - b.month);
    const p = async (of: readonly RefittedRow[]) => (await scanLots([{ rows: of, names: [] }], {}))[0]?.scan?.p ?? 1;
    expect(await p(rows.map((one) => ({ ...one, shop: "one" })))).toBeLessThan(0.01);
    expect(await p(rows)).toBeGreaterThan(0.5);
  });
});

const timed = (model: string, labour_min: number | null, n: number, from = 0) => Array.from({ length: n }, (_, i) => job(`${model}${from + i}`, "2024-03-01", { model, labour_min, technician: "Ann" }));

describe("bench minutes of all shops", () => {
  test("are at the pace of the usual shop: a model that mostly comes to the slow shop does not look slow", async () => {
    // Birch takes twice as long as Alder for both models, and each has 12 jobs: the usual shop lies between, √2 times Alder's minutes.
    await pooled({ Alder: { tickets: [...timed("Ash", 30, 10), ...timed("Yew", 60, 2)] }, Birch: { tickets: [...timed("Ash", 60, 2), ...timed("Yew", 120, 10)] } }, async () => null);
    const { rows } = await pooledLabour(engine), of = (model: string) => rows.find((row) => row["model"] === model);
    expect([of("Ash")?.["n"], of("Ash")?.["shops"], of("*")?.["n"], of("*")?.["shops"], of("*")?.["between_shops"]]).toEqual([12, 2, 24, 2, null]);
    expect(of("Ash")?.["median"]).toBeCloseTo(30 * Math.SQRT2, 9);
    expect(of("Yew")?.["median"]).toBeCloseTo(60 * Math.SQRT2, 9);
    expect(of("Yew")?.["p90"]).toBeCloseTo(60 * Math.SQRT2, 9);
  });

  test("of one shop alone are that shop's own, typing slips and blanks set aside alike", async () => {
    const tickets = [...timed("Ash", 40, 6), ...timed("Ash", 55, 6, 6), ...timed("Yew", 70, 11), ...timed("Yew", 2, 1, 11), ...timed("Ash", null, 2, 12)];
    const [own] = await pooled({ Alder: { tickets } }, () => labour(engine, EVERYTHING)), together = await pooledLabour(engine);
    expect(own?.rows[0]).toMatchObject({ n: 23, typed_as_hours: 1, blank: 2 });
    expect(without(together, "shops", "between_shops")).toEqual(without(labourTable(own ?? expect.fail("none")), "shops", "between_shops"));
  });

  test("tell how far shops lie apart from five shops with thirty jobs on", async () => {
    const shops = Object.fromEntries([30, 30, 40, 50, 50].map((minutes, i) => [`S${i}`, { tickets: timed("Ash", minutes, 30) }]));
    await pooled(shops, async () => null);
    const logs = [30, 30, 40, 50, 50].map(Math.log), mean = logs.reduce((sum, one) => sum + one) / 5;
    expect((await pooledLabour(engine)).rows[0]?.["between_shops"]).toBeCloseTo(Math.exp(Math.sqrt(logs.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 4)), 9);
  });
});

describe("use of all shops", () => {
  test("is the sum by month with each shop's share, months counted in which records run and nothing was used", async () => {
    const used = (ticket_no: string, qty: number, action = "replaced") => ({ ticket_no, position: "ar_clutch", action, qty, part_no: "CL-1" }), parts = [{ part_no: "CL-1", name: "Clutch" }];
    await pooled({
      Alder: { parts, tickets: [job("1", "2024-01-05"), job("2", "2024-03-05")], findings: [used("1", 8), used("2", 3, "wanted")] },
      Birch: { parts, tickets: [job("1", "2024-02-05"), job("2", "2024-03-05")], findings: [used("2", 9)] },
      Cedar: { parts, tickets: [job("1", "2024-01-05")] },
    }, async () => null);
    const [by_month, by_shop] = await demandTables(engine), few = "under 10 pieces: the count is all there is", named = { interchange: "CL-1", name: "Clutch" };
    expect(by_month?.rows).toEqual([
      { ...named, month: "2024-01-01", replaced: 8, wanted: 0, shops: 1, shops_recording: 2, largest_share: null, note: few },
      { ...named, month: "2024-02-01", replaced: 0, wanted: 0, shops: 0, shops_recording: 2, largest_share: null, note: few },
      { ...named, month: "2024-03-01", replaced: 9, wanted: 3, shops: 2, shops_recording: 2, largest_share: 0.75, note: "" },
    ]);
    expect(by_shop?.rows.map(({ shop, replaced, wanted, share, all_shops, months, pieces_a_month }) => [shop, replaced, wanted, share, all_shops, months, pieces_a_month])).toEqual([
      ["Alder", 8, 3, 11 / 20, 20, 3, 11 / 3], ["Birch", 9, 0, 9 / 20, 20, 2, 4.5],
    ]);
  });
});
