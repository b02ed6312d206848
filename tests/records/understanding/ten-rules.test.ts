import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ends, findings, fixes, fixture, readShape, sheetOf } from "./shape.ts";

/** The ten importer rules of the trade brief, section 9, each on its own small sheet; values worked out by hand. */
const HEAD = "Job,Came,Reel,Done,Mins";
const jobs = (...rows: string[]) => sheetOf(`${HEAD}\n${rows.join("\n")}\n`);
const told = async (file: { name: string; blob: Blob }) => (await readShape(file)).reads[0]?.remarks ?? [];
const column = async (name: string, file: { name: string; blob: Blob }, table = "tickets") => ((await readShape(file)).rows[table] ?? []).map((row) => row[name] ?? null);

describe("the ten importer rules", () => {
  test("1: encoding, separator, decimal sign and date order are found for each file; the order is proved by numbers over 12 and contradictions are listed", async () => {
    const utf16 = Uint8Array.from([0xff, 0xfe, ...Buffer.from("Job\tCame\tReel\tLabour\n1\t13/04/2025\tWithy 5\t£52,50\n2\t04/13/2025\tWithy 5\t£8,25\n3\t14/04/2025\tWithy 5\t£9,00\n", "utf16le")]);
    const { rows, reads } = await readShape({ name: "jobs.txt", blob: new Blob([utf16]) });
    expect(rows["tickets"]?.map((row) => [row["received_on"], row["labour_charge"]])).toEqual([["2025-04-13", 52.5], ["2025-04-13", 8.25], ["2025-04-14", 9]]);
    expect(reads[0]?.remarks.filter((remark) => /^Dates were read day first|^Line 3: the date 04\/13\/2025 speaks against it/.test(remark))).toHaveLength(2);
  });
  test("2: totals, blank rows, ditto marks and repeated headings are dropped or copied down, and counted", async () => {
    const file = jobs("1,13/04/2025,Withy 5,full service,30", ",,,,", HEAD, "2,do,do,drag,20", ",,,TOTAL APRIL,50");
    expect(ends(await readShape(file))).toEqual({ read: 5, in: 2, known: 0, to_fix: 0, dropped: 3 });
    expect(await column("received_on", file)).toEqual(["2025-04-13", "2025-04-13"]);
    expect((await told(file)).filter((remark) => /blank|repeat of the headings|row of totals|ditto/.test(remark)).map((remark) => remark.split(":")[0])).toEqual(["1 row", "1 row", "1 row", "1 row"]);
  });
  test("3: the same ticket, day and reel twice is one; the same number with other content is kept twice", async () => {
    const file = jobs("1,13/04/2025,Withy 5,full service,30", "1,13/04/2025,Withy 5,full service,30", "1,13/04/2025,Withy 5,full service,45");
    expect(ends(await readShape(file))).toEqual({ read: 3, in: 2, known: 1, to_fix: 0, dropped: 0 });
    expect(await column("labour_min", file)).toEqual([30, 45]);
  });
  test("4: minutes in every writing; under 6 are hours, over 600 are waiting and left out, said in the note", async () => {
    const file = jobs(...["55", "1h40", "1:40", ".75 ea", "1/2 hr", "2 1/4", '"0,5+0,5"', "3", "900"].map((time, at) => `${at + 1},13/04/2025,Withy 5,full service,${time}`));
    expect(await column("labour_min", file)).toEqual([55, 100, 100, 45, 30, 135, 60, 180, null]);
    expect((await column("note", file)).at(-1)).toMatch(/Mins: 900/);
    expect(await column("labour_min", sheetOf("Job,Came,Reel,HRS\n1,13/04/2025,Withy 5,1.20\n"))).toEqual([72]);
  });
  test("5: the sign and code of a currency are stripped, and none is converted", async () => {
    const file = sheetOf("Job;Came;Reel;Labour\n1;13/04/2025;Withy 5;£38.00\n2;14/04/2025;Withy 5;GBP 1 240.50\n3;15/04/2025;Withy 5;EUR 11,50\n");
    expect(await column("labour_charge", file)).toEqual([38, 1240.5]);
    expect(fixes((await readShape(file)).reads)).toEqual([[4, "Labour", "EUR 11,50", "“EUR 11,50” is in another currency than the other amounts (GBP); nothing is converted, so write it in GBP"]]);
  });
  test("6: flags are yes or no in every writing, and a blank is not known", async () => {
    const flags = ["y", "Y", "yes", "1", "x", "✓", "j", "n", "no", "0", "-", ""];
    const file = sheetOf(`Job,Came,Reel,Warranty\n${flags.map((flag, at) => `${at + 1},13/04/2025,Withy 5,${flag}`).join("\n")}\n`);
    expect(await column("warranty", file)).toEqual([...Array.from({ length: 7 }, () => true), false, false, false, false, null]);
  });
  test("7: maker and model are told apart by the shop's own list", async () => {
    const file = jobs("1,13/04/2025,brackhelm whinbeck40,drag,30", "2,14/04/2025,Slipdene45,drag,30", "3,15/04/2025,Nobody 7,drag,30");
    expect([await column("maker", file), await column("model", file)]).toEqual([["Brackhelm", "Wexmoor", null], ["Whinbeck 40", "Slipdene 45", "Nobody 7"]]);
  });
  test("8: phrases for several reels make a ticket each, and those of a club belong together", async () => {
    const file = sheetOf("Job,Came,Customer,Reel,Done,Mins\n1,13/04/2025,Club (3 of 6),Withy 5,full service,30\n2,13/04/2025,,Withy 5,full service. x3 reels,30 ea\n3,14/04/2025,,Withy 5 and Fernhowe 7,full service,40\n");
    const { rows } = await readShape(file);
    expect(rows["tickets"]?.map((row) => [row["ticket_no"], row["batch"] ?? null, row["labour_min"]])).toEqual([
      ["1", "club 2025-04-13", 30], ["2/1", "together 2", 30], ["2/2", "together 2", 30], ["2/3", "together 2", 30], ["3/1", "together 3", 20], ["3/2", "together 3", 20],
    ]);
  });
  test("9: cells nothing is made of are kept in the note and counted, and what became of every row is said", async () => {
    const file = jobs("1,13/04/2025,Whinbeck 40,line roller bearing replaced,soon", "2,14/04/2025,Whinbeck 40,drag,30");
    const shape = await readShape(file);
    expect([await column("note", file), findings(shape.rows)]).toEqual([["line roller bearing replaced | Mins: soon", "drag"], [["1", "line_roller_bearing", "replaced", 1, null]]]);
    expect(ends(shape)).toEqual({ read: 2, in: 2, known: 0, to_fix: 0, dropped: 0 });
    expect((await told(file)).some((remark) => remark.startsWith("1 row: what Mins says is no time; it was kept in the note"))).toBe(true);
  });
  test("10: nothing that reads files can send anything: none of its code names a way out", () => {
    const sources = Object.keys(import.meta.glob("../../../src/records/**/*.ts"));
    expect(sources.length).toBeGreaterThan(100);
    const sends = sources.filter((path) => /\bfetch\(|XMLHttpRequest|WebSocket|sendBeacon|EventSource/.test(readFileSync(new URL(path, import.meta.url), "utf8")));
    expect(sends).toEqual([]);
  });
});

test("the months of a stock sheet are left out, and it is told which", async () => {
  const { reads } = await readShape(fixture("stock-sheet.csv"));
  expect(reads[0]?.remarks.find((remark) => remark.startsWith("Left out:"))).toBe("Left out: Min, Jan, Feb, Mar, Apr, Last order, ETA.");
});
