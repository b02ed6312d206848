import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { Entries } from "../../../src/records/bench-log/bench-store.ts";
import { fieldsOf, FINE, fineFields, foundLines, isFine } from "../../../src/records/bench-log/found.ts";
import { benchFaults, benchFile, finishedRows } from "../../../src/records/bench-log/finished-rows.ts";
import { counts, emptied, openBench, type Bench } from "../bench.ts";

const entriesOf = (values: Record<string, string | null>): Entries => new Map(Object.entries(values).map(([field, value]) => [field, { value, revision: 1 }]));
const WRITTEN = {
  ticket_no: "R-1052", received_on: "2026-05-04", model: "Withy 5", maker: "Eldmere", reel_kind: "spinning", serial: "00417", water: "salt", salt_days: "40",
  rinse: null, job: "full service", complaint: "=grinds; \"worse\"\nsince Easter", finished_on: "2026-05-06", outcome: "returned", labour_min: "52",
  "found:ar_clutch:1:grade": "3", "found:ar_clutch:1:mode": "slipping", "found:ar_clutch:1:action": "replaced", "found:ar_clutch:1:qty": "1",
  "found:main_gear:1:grade": "2", "found:main_gear:1:action": "cleaned", "found:main_gear:2:note": "look next time",
  ...Object.fromEntries(fineFields("line_roller_bearing")),
  "shims:Drive gear": "0.10 handle side, 0.05 other side", check_back_turn: "2", check_drag_start: "3.1", check_drag_run: "2.8", check_drag_unit: "kg", check_seal: "passed",
};
const NOTE = "Shims as found: Drive gear: 0.10 handle side, 0.05 other side.\nChecks: back-turn of the handle 2 degrees, drag when it starts 3.1 kg, drag while it runs 2.8 kg, seal test passed.";

let bench: Bench;
beforeAll(async () => void (bench = await openBench()));
beforeEach(() => emptied(bench));

describe("a ticket of the bench in the records", () => {
  test("comes in as it was written: what is not known is empty, every finding has its row, shims and checks in the note", async () => {
    const file = benchFile(finishedRows(entriesOf(WRITTEN)));
    const imported = await bench.bringIn({ [file.name]: file.blob }, { origin: "bench" });
    expect(imported).toMatchObject({ kept: true, origin: "bench", rejects: [] });
    expect(counts(imported, "Bench log, ticket R-1052 › tickets")).toEqual([1, 1, 0, 0, 0]);
    const { tickets = [], findings = [] } = await bench.records();
    expect(tickets).toMatchObject([{
      ticket_no: "R-1052", received_on: "2026-05-04", finished_on: "2026-05-06", maker: "Eldmere", model: "Withy 5", serial: "00417", water: "salt", salt_days: 40,
      use_days: null, rinse: null, complaint: "=grinds; \"worse\"\nsince Easter", labour_min: 52, outcome: "returned", note: NOTE,
    }]);
    expect(findings.map(({ position, grade, mode, action, qty, note }) => [position, grade, mode, action, qty, note])).toEqual([
      ["ar_clutch", 3, "slipping", "replaced", 1, null],
      ["line_roller_bearing", 0, null, "left", null, null],
      ["main_gear", 2, null, "cleaned", null, null],
      ["main_gear", null, null, null, null, "look next time"],
    ]);
  });

  test("finished twice comes in once, and the strict denominator knows what one touch found fine", async () => {
    const file = benchFile(finishedRows(entriesOf(WRITTEN)));
    await bench.bringIn({ [file.name]: file.blob }, { origin: "bench" });
    expect(await bench.bringIn({ [file.name]: file.blob }, { origin: "bench" })).toMatchObject({ kept: false });
    const seen = await bench.engine.rows("-- Written inspections.\n-- Columns: position varchar, failed boolean\nselect position, failed from inspections where written order by position");
    expect(seen).toEqual([{ position: "ar_clutch", failed: true }, { position: "line_roller_bearing", failed: false }, { position: "main_gear", failed: false }]);
  });

  test("without any finding comes in too, in a shop that has no records", async () => {
    const file = benchFile(finishedRows(entriesOf({ ticket_no: "0001", received_on: "2026-05-04", model: "Withy 5" })));
    expect(await bench.bringIn({ [file.name]: file.blob }, { origin: "bench" })).toMatchObject({ kept: true, rejects: [] });
    expect((await bench.records())["tickets"]).toMatchObject([{ ticket_no: "0001", model: "Withy 5", note: null, job: null }]);
  });
});

describe("the checks before a ticket goes into the records", () => {
  test("are the import's own, told by column and position", () => {
    const faults = benchFaults(finishedRows(entriesOf({
      ...WRITTEN, model: null, finished_on: "2026-05-01", use_days: "12", labour_min: "0", "found:ar_clutch:1:qty": "0",
    })), "2026-06-01");
    expect(faults.map(({ column, position }) => [column, position])).toEqual([
      ["model", null], ["labour_min", null], ["finished_on", null], ["use_days", null], ["qty", "ar_clutch"]]);
    expect(benchFaults(finishedRows(entriesOf(WRITTEN)), "2026-06-01")).toEqual([]);
  });
});

describe("lines of findings", () => {
  test("stand in the order of the position list, the lines of one position in theirs", () => {
    const found = foundLines(entriesOf({ "found:main_gear:2:note": "b", "found:ar_clutch:1:grade": "3", "found:main_gear:1:grade": "2", ...Object.fromEntries(fineFields("line_roller")) }));
    expect(found.map(({ position, line }) => `${position} ${line}`)).toEqual(["line_roller 1", "ar_clutch 1", "main_gear 1", "main_gear 2"]);
  });

  test("all fine is grade 0 and left, and nothing else", () => {
    const [roller] = foundLines(entriesOf(Object.fromEntries(fineFields("line_roller"))));
    expect([FINE, roller, roller && isFine(roller)]).toEqual([{ grade: "0", action: "left" }, { position: "line_roller", line: 1, grade: "0", action: "left" }, true]);
    const [cleaned] = foundLines(entriesOf({ ...Object.fromEntries(fineFields("line_roller")), "found:line_roller:1:note": "new last year" }));
    expect(cleaned && isFine(cleaned)).toBe(false);
  });

  test("a line whose fields were all taken away or emptied is none", () => {
    expect(foundLines(entriesOf({ "found:line_roller:1:grade": null, "found:line_roller:1:note": "  " }))).toEqual([]);
    expect(fieldsOf({ position: "line_roller", line: 2 })).toContain("found:line_roller:2:part_no");
  });
});
