import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EVERYTHING } from "../../src/answers/filter.ts";
import { timedWork, type TimedWork } from "../../src/answers/labour/work.ts";
import { whatTakesLonger } from "../../src/answers/labour/what-takes-longer.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fillSeed } from "./seed-shop.ts";
import { fill, openShop, POSITIONS } from "./shop.ts";

let next = 0;
const work = (labour_min: number, rest: Partial<TimedWork> = {}): TimedWork => ({
  ticket_no: `W-${(next += 1)}`, received_on: "2024-03-01", job: "full service", reel_kind: "spinning", maker: "Brackhelm", model: "Whinbeck 40", tier: "mid",
  technician: null, labour_min, warranty: false, in_batch: false, source_file: null, source_line: null, parts_replaced: 0, stuck_screws: false, labour_charge: 50, ...rest,
});
const times = <Row>(count: number, row: (at: number) => Row) => Array.from({ length: count }, (_, at) => row(at));

describe("timedWork", () => {
  let engine: Engine;
  beforeAll(async () => { engine = await openShop(); });
  afterAll(() => engine.close());

  test("counts parts replaced and stuck screws of each ticket, and leaves out blanks and slips", async () => {
    const ticket = { received_on: "2024-03-01", finished_on: "2024-03-05", maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "full service" };
    await fill(engine, {
      position_list: [...POSITIONS, { position: "side_cover_screws", name: "Side-cover screws", group_code: "BD", group_name: "Body", family: "screw", optional: false }],
      tickets: [
        { ...ticket, ticket_no: "1", labour_min: 60 }, { ...ticket, ticket_no: "2", labour_min: 70 }, { ...ticket, ticket_no: "3", labour_min: null },
        { ...ticket, ticket_no: "4", labour_min: 1.5 }, { ...ticket, ticket_no: "5", labour_min: 65 },
      ],
      findings: [
        { ticket_no: "1", position: "side_cover_screws", mode: "seized", action: "cleaned" }, { ticket_no: "1", position: "line_roller_bearing", action: "replaced" },
        { ticket_no: "1", position: "drag_knob_seal", action: "replaced" }, { ticket_no: "2", position: "line_roller_bearing", mode: "seized", action: "wanted" },
      ],
    });
    const rows = await timedWork(engine, EVERYTHING);
    expect(rows.map((row) => [row.ticket_no, row.parts_replaced, row.stuck_screws])).toEqual([["1", 2, true], ["2", 0, false], ["5", 0, false]]);
  });
});

describe("whatTakesLonger", () => {
  test("finds what was put in exactly, whatever the job and the model: 10 % a part, 20 % a stuck screw", () => {
    const rows = ["Whinbeck 40", "Dovekin 25"].flatMap((model, m) => times(30, (at) => {
      const parts_replaced = at % 4, stuck_screws = at % 3 === 0;
      return work((40 + 60 * m) * 1.1 ** parts_replaced * (stuck_screws ? 1.2 : 1), { model, parts_replaced, stuck_screws });
    }));
    const { drivers, reason } = whatTakesLonger(rows);
    expect(reason).toBeNull();
    expect(drivers.map(({ name, jobs, ratio }) => [name, jobs, ratio === undefined ? null : Number(ratio.toFixed(6))])).toEqual([
      ["each part replaced", 44, 1.1], ["a stuck screw", 20, 1.2], ["under warranty", 0, null], ["reels that came together", 0, null],
    ]);
  });

  test("holds a technician beside the colleague with most jobs on the same work, where the plain means mislead", () => {
    // T2 takes 1.3 times as long and is given mostly the short jobs: by plain means T2 looks the faster one.
    const short = { job: "external" }, long = { job: "full service" };
    const rows = [
      ...times(15, () => work(20, { ...short, technician: "T1" })), ...times(45, () => work(80, { ...long, technician: "T1" })),
      ...times(40, () => work(26, { ...short, technician: "T2" })), ...times(10, () => work(104, { ...long, technician: "T2" })),
    ];
    const { beside, technicians } = whatTakesLonger(rows);
    expect(beside).toBe("T1");
    expect(technicians).toHaveLength(1);
    expect(technicians[0]).toMatchObject({ technician: "T2", year: 2024, jobs: 50 });
    expect(technicians[0]?.ratio).toBeCloseTo(1.3, 9);
    expect(technicians[0]?.unadjusted).toBeLessThan(0.7);
  });

  test("keeps quiet about fewer than ten jobs, and says when there is nothing to compare", () => {
    expect(whatTakesLonger([])).toMatchObject({ reason: "no finished job has minutes written", technicians: [] });
    expect(whatTakesLonger([work(60), work(30, { model: "Dovekin 25" })])).toMatchObject({ reason: "too few jobs of one kind on one model", jobs: 2 });
    const few = whatTakesLonger([...times(20, (at) => work(60 + at, { technician: "T1" })), ...times(9, (at) => work(90 + at, { technician: "T2" }))]);
    expect(few.technicians).toEqual([{ technician: "T2", year: 2024, jobs: 9, unadjusted: expect.closeTo(1.35, 1) as number }]);
  });

  test("lists people by name and year, never by speed", () => {
    const rows = ["T3", "T1", "T2"].flatMap((technician, t) => times(12 + t, (at) => work(100 - 20 * t + at, { technician, received_on: at % 2 ? "2024-05-01" : "2023-05-01" })));
    expect(whatTakesLonger(rows).technicians.map(({ technician, year }) => `${technician} ${year}`)).toEqual(["T1 2023", "T1 2024", "T3 2023", "T3 2024"]);
  });
});

describe("PT7, the junior who learns (invented shop, TRADE.md 5.9: 1.35 in 2023, 1.15 in 2025)", () => {
  let engine: Engine;
  beforeAll(async () => { engine = await openNodeEngine(); });
  afterAll(() => engine.close());

  test.each([1, 2, 3])("seed %i: the limits of 2023 hold 1.35, those of 2025 hold 1.15, and the two do not touch", async (seed) => {
    await fillSeed(engine, seed);
    const { technicians, beside } = whatTakesLonger(await timedWork(engine, EVERYTHING));
    const of = (year: number) => technicians.find((one) => one.technician === "T2" && one.year === year);
    expect(beside).toBe("T1");
    const [first, last] = [of(2023), of(2025)];
    expect(first?.low).toBeLessThanOrEqual(1.35);
    expect(first?.high).toBeGreaterThanOrEqual(1.35);
    expect(last?.low).toBeLessThanOrEqual(1.15);
    expect(last?.high).toBeGreaterThanOrEqual(1.15);
    expect(last?.high).toBeLessThan(first?.low ?? 0);
  });
});
