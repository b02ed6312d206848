import { describe, expect, test } from "vitest";
import { read } from "../reading/reading.ts";

const HEAD = "ticket_no,received_on,finished_on,model,use_days,salt_days,complaint,came_in";
const tickets = (...rows: string[]) => read([HEAD, ...rows].join("\n"));
const FINDINGS = "ticket_no,position,action,routine,qty";
const findings = (...rows: string[]) => read([FINDINGS, ...rows].join("\n"), "findings.csv");
const reasons = async (reading: ReturnType<typeof read>) => (await reading).rejects.map(({ line, column, value, reason }) => [line, column, value, reason]);

describe("columns of one row that contradict each other", () => {
  test("a reel cannot be done before it came in", async () => {
    expect(await reasons(tickets("R-1,2026-03-12,2026-03-01,A,,,,"))).toEqual([[2, "finished_on", "2026-03-01", "1 March 2026 is before the reel came in (12 March 2026)"]]);
    expect((await tickets("R-1,2026-03-12,2026-03-12,A,,,,")).rejects).toEqual([]);
  });
  test("days of use are not fewer than days in salt", async () => {
    expect(await reasons(tickets("R-1,2026-03-12,,A,10,12,,"))).toEqual([[2, "use_days", "10", "10 days of use are fewer than the 12 days in salt"]]);
    expect((await tickets("R-1,2026-03-12,,A,12,12,,", "R-2,2026-03-12,,A,,12,,")).rejects).toEqual([]);
  });
  test("an order does not arrive before it was made", async () => {
    const orders = read("supplier,part_no,ordered_on,arrived_on\nA,P,2026-03-12,2026-03-11\n", "orders.csv");
    expect(await reasons(orders)).toEqual([[2, "arrived_on", "2026-03-11", "11 March 2026 is before it was ordered (12 March 2026)"]]);
  });
  test("a part that was replaced or wanted was at least one", async () => {
    expect(await reasons(findings("R-1,rotor,replaced,,0", "R-1,rotor,wanted,,0"))).toEqual([
      [2, "qty", "0", "a part was replaced, so it must be 1 or more"], [3, "qty", "0", "a part was wanted, so it must be 1 or more"],
    ]);
  });
  test("a quantity of 0 where none was used is read as empty, and counted", async () => {
    const { staged, remarks } = await findings("R-1,rotor,cleaned,,0", "R-1,rotor,,,0");
    expect(staged["findings"]?.map(({ qty }) => qty)).toEqual([null, null]);
    expect(remarks).toContain("2 rows: a quantity of 0 where no part was replaced or wanted was read as empty.");
  });
});

describe("a row with a fault", () => {
  test("goes whole to the rows to fix, with every fault of it", async () => {
    const { staged, rejects, rows_to_fix } = await tickets("R-1,2026-02-30,,A,lots,-1,,", "R-2,2026-02-01,,A,,,,");
    expect(staged["tickets"]?.map(({ ticket_no }) => ticket_no)).toEqual(["R-2"]);
    expect(rejects.map(({ column }) => column)).toEqual(["received_on", "salt_days", "use_days"]);
    expect(rows_to_fix).toBe(1);
  });
  test("names the column as the file does", async () => {
    const { rejects } = await read("Job No;Date In;Model\nR-1;soon;A\n");
    expect(rejects[0]).toMatchObject({ line: 2, column: "Date In", value: "soon" });
  });
  test("says which required cell is empty, or that the file has no such column", async () => {
    expect(await reasons(tickets("R-1,,,,,,,"))).toEqual([[2, "received_on", "", "received_on is empty"], [2, "model", "", "model is empty"]]);
    expect(await reasons(read("ticket,date_in\n1,2026-01-01\n"))).toEqual([[2, "model", "", "this file has no column model"]]);
  });
  test("has one reason when the file lacks what every row needs, however much else is wrong", async () => {
    expect(await reasons(read("job no,done,rinse\n1,maybe,maybe\n"))).toEqual([[2, "received_on, model", "", "this file has no columns received_on and model"]]);
  });
  test("has its line counted where it starts, over cells of several lines and blank lines", async () => {
    const { rejects } = await tickets('R-1,2026-03-12,,A,,,"two\nlines",', "", "R-2,never,,A,,,,");
    expect(rejects.map(({ line }) => line)).toEqual([5]);
  });
  test("shows a long cell shortened", async () => {
    const { rejects } = await tickets(`R-1,${"9".repeat(900_000)},,A,,,,`);
    expect(rejects[0]?.value).toHaveLength(501);
  });
});

describe("the shape of rows", () => {
  test("blank rows and repeated headings are dropped and counted", async () => {
    const { rows_read, rows_dropped, remarks, staged } = await read(`\n${HEAD}\n,,,,,,,\nR-1,2026-03-12,,A,,,,\n${HEAD}\n\n`);
    expect([rows_read, rows_dropped, staged["tickets"]?.length]).toEqual([5, 4, 1]);
    expect(remarks).toEqual(expect.arrayContaining(["3 rows: dropped as blank.", "1 row: dropped as a repeat of the headings."]));
  });
  test("a row with more cells than headings goes to the rows to fix, unless they are empty", async () => {
    expect(await reasons(tickets("R-1,2026-03-12,,A,,,,,,", "R-2,2026-03-12,,A,,,,,extra"))).toEqual([[3, "", "extra", "the row has 9 cells and the heading row 8; a cell may hold a separator"]]);
  });
  test("cells missing at the end of a row are empty, and counted", async () => {
    const { staged, remarks } = await tickets("R-1,2026-03-12,,A");
    expect(staged["tickets"]).toHaveLength(1);
    expect(remarks).toContain("1 row: fewer cells than the heading row; the missing ones were read as empty.");
  });
  test("lines that a wrong quotation mark made one row are told together", async () => {
    expect(await reasons(tickets('R-1,2026-03-12,,"A"x,,,,', 'R-2,2026-03-12,,"B",,,,'))).toEqual([
      [2, "", "R-1", "a quotation mark in it does not end where the cell ends, so lines 2 to 3 were read as one row"],
    ]);
  });
  test("columns that none of ours is are named in the remarks", async () => {
    const { remarks } = await read(`${HEAD},Customer,${Array.from({ length: 1990 }, (_, at) => `c${at}`).join(",")}\n`);
    expect(remarks).toContain("Left out: Customer, c0, c1, c2, c3, c4, c5, c6, c7, c8 and 1981 more (tickets have no such column, or it is there twice).");
  });
  test("hours are kept as minutes and failed as a grade, and the remarks say so", async () => {
    const { staged, remarks } = await read("ticket,date_in,model,part,failed,labour_hours\n1,2026-01-01,A,rotor,yes,5.28333333333333\n2,2026-01-01,A,rotor,no,0.25\n3,2026-01-01,A,rotor,,\n");
    expect(staged["tickets"]?.map(({ labour_min }) => labour_min)).toEqual([317, 15, null]);
    expect(staged["findings"]?.map(({ grade }) => grade)).toEqual([4, 0, null]);
    expect(remarks).toEqual(expect.arrayContaining(["labour_hours was read as hours and kept as minutes.", "failed was read as a grade: yes as 4 (failed), no as 0 (as new)."]));
  });
});

describe("what is worked out from other cells", () => {
  test.each([
    ["handle goes backwards", "complaint", true], ["annual service please", "planned", true], ["Service, feels odd", null, false],
    ["service, grinding", "complaint", true], ["dropped in sea", "immersion", true], ["dropped on rocks", "accident", true],
    ["asdf", null, false], ["", null, false],
  ])("“%s” came in as %s, marked as a guess: %s", async (complaint, came_in, guessed) => {
    const { staged } = await tickets(`R-1,2026-03-12,,A,,,"${complaint}",`);
    expect(staged["tickets"]?.[0]).toMatchObject({ came_in, came_in_guessed: guessed });
  });
  test("a written word is never replaced by a guess", async () => {
    const { staged, remarks } = await tickets("R-1,2026-03-12,,A,,,grinding,planned", "R-2,2026-03-12,,A,,,grinding,");
    expect(staged["tickets"]?.map((row) => [row["came_in"], row["came_in_guessed"]])).toEqual([["planned", false], ["complaint", true]]);
    expect(remarks).toContain("1 row: why the reel came in was guessed from the complaint.");
  });
  test("an action that says routine makes the replacement routine", async () => {
    const { staged } = await findings("R-1,rotor,service kit,,1", "R-1,rotor,replaced,,1", "R-1,rotor,service kit,no,1");
    expect(staged["findings"]?.map((row) => [row["action"], row["routine"]])).toEqual([["replaced", true], ["replaced", null], ["replaced", false]]);
  });
});
