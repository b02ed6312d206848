import { describe, expect, test } from "vitest";
import { ends, findings, fixes, fixture, readShape, understood } from "./shape.ts";
import type { Rows } from "./shape.ts";

const tickets = (rows: Rows, ...columns: string[]) => (rows["tickets"] ?? []).map((row) => columns.map((column) => row[column] ?? null));
async function taken(name: string, given: Record<string, string> = {}) {
  const file = fixture(name), { answers, questions } = await understood(file, given);
  return { questions, ...(await readShape(file, { answers })) };
}

describe("9.1 the workshop's spreadsheet", () => {
  test("asks for nothing but the order of the dates, and prefers the one in which jobs take days", async () => {
    const { questions } = await understood(fixture("workshop-sheet.csv"));
    expect(questions.map(({ about, best }) => [about, best])).toEqual([["dates", "day first"]]);
  });
  test("gives three tickets; the duplicate is known, the total dropped", async () => {
    const { rows, reads } = await taken("workshop-sheet.csv");
    expect(ends({ rows, reads })).toEqual({ read: 5, in: 3, known: 1, to_fix: 0, dropped: 1 });
    expect(tickets(rows, "ticket_no", "received_on", "finished_on", "maker", "model", "water", "labour_min", "labour_charge", "parts_charge", "batch")).toEqual([
      ["R-1041", "2025-04-03", "2025-04-11", "Brackhelm", "Whinbeck 40", "salt", 55, 38, 35.5, null],
      ["R-1042", "2025-04-04", null, "Wexmoor", "Slipdene 45", "salt", 100, 52, 21.5, "club 2025-04-04"],
      ["R-1043", "2025-04-05", "2025-04-09", "Ostvarg", "Ekholt 30", "fresh", 70, 38, 19, null],
    ]);
  });
  test("gives each part named in two cells once, the sizes and bare families without a place", async () => {
    const { rows } = await taken("workshop-sheet.csv");
    expect(findings(rows)).toEqual([
      ["R-1041", "ar_clutch", "replaced", 1, null], ["R-1041", "ar_sleeve", "cleaned", null, null], ["R-1041", "?ball bearing", "replaced", 1, "4x7x2.5"],
      ["R-1042", "side_cover_screws", "adjusted", null, null],
      ["R-1043", "body_seal", "replaced", 1, null], ["R-1043", "?seal", "replaced", 1, null],
    ]);
    expect(rows["findings"]?.[0]).toMatchObject({ note: "AR brg replaced | ar brg", read_from: "Work Done | Parts", rule: "said beside the part" });
  });
  test("takes no customer's name over", async () => {
    expect(JSON.stringify((await taken("workshop-sheet.csv")).rows)).not.toMatch(/H\.|Club/);
  });
});

describe("9.2 the bench notebook", () => {
  test("asks for order and year without preferring any, because the dates contradict each other", async () => {
    const { questions, sheets } = await understood(fixture("bench-notebook.txt"));
    expect(questions.map(({ about, best }) => [about, best])).toEqual([["dates", null], ["year", null]]);
    expect(sheets[0]?.dates?.against.map(({ line, value }) => [line, value])).toEqual([[5, "14/4"], [4, "3/31"]]);
  });
  test("unanswered, every job waits in the rows to fix", async () => {
    const { rows, reads } = await readShape(fixture("bench-notebook.txt"));
    expect(ends({ rows, reads })).toEqual({ read: 5, in: 0, known: 0, to_fix: 4, dropped: 1 });
    expect(fixes(reads).map(([line, column]) => [line, column])).toEqual([[2, "date"], [3, "date"], [4, "date"], [5, "date"]]);
  });
  test("answered, gives three tickets for “x3 reels”, one for the ditto row, and drops the line that is no job", async () => {
    const { rows, reads } = await taken("bench-notebook.txt", { dates: "month first", year: "2025" });
    expect(ends({ rows, reads })).toEqual({ read: 5, in: 4, known: 0, to_fix: 0, dropped: 1 });
    expect(tickets(rows, "received_on", "maker", "model", "labour_min", "source_line")).toEqual([
      ["2025-04-03", "Uffenby", "Dunvegg 20", 45, 2], ["2025-04-03", "Uffenby", "Dunvegg 20", 45, 2], ["2025-04-03", "Uffenby", "Dunvegg 20", 45, 2],
      ["2025-04-03", "Uffenby", "Dunvegg 20", 45, 3], ["2025-03-31", "Wexmoor", "Piddock 150", 30, 4], ["2025-04-14", null, "jarnvik 30 2spd", 135, 5],
    ]);
    expect(new Set(rows["tickets"]?.map((row) => row["ticket_no"])).size).toBe(6);
    expect(JSON.stringify(rows)).not.toContain("lady");
  });
});

describe("9.3 the till's export", () => {
  test("gives the ticket of the one bill that says which reel, with the line that had no reference", async () => {
    const { rows, reads, questions } = await taken("till-export.csv");
    expect(questions).toEqual([]);
    expect(ends({ rows, reads })).toEqual({ read: 5, in: 3, known: 0, to_fix: 1, dropped: 1 });
    expect(rows["tickets"]).toEqual([{
      ticket_no: "R1051", received_on: "2025-04-08", finished_on: "2025-04-08", maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", job: "full service",
      outcome: "returned", labour_charge: 52, parts_charge: 42, note: "Full service spinning (Whinbeck 40)", source_line: 2,
    }]);
    expect(findings(rows)).toEqual([["R1051", "ar_clutch", "replaced", 1, null], ["R1051", "?ball bearing", "replaced", 2, "4x7x2.5"]]);
  });
  test("leaves the line for two jobs to fix and drops the credit note", async () => {
    const { reads } = await taken("till-export.csv");
    expect(fixes(reads)).toEqual([[5, "ref", "1053/1054", "“1053/1054” names 2 jobs, and nothing says what belongs to which"]]);
    expect(reads[0]?.remarks).toContain("1 row: dropped as a credit note: nothing was fitted.");
  });
});

describe("9.4 the old database", () => {
  test("is read month first by three dates against one, and says which", async () => {
    const { questions } = await understood(fixture("old-database.txt"));
    expect(questions.map(({ about, best }) => [about, best])).toEqual([["dates", "month first"]]);
    expect((await readShape(fixture("old-database.txt"))).reads[0]?.remarks).toContain("Line 5: the date 13/03/2024 speaks against it.");
  });
  test("gives four tickets with decimal hours as minutes, zeros as unknown, and findings from its slots", async () => {
    const { rows, reads } = await taken("old-database.txt");
    expect(ends({ rows, reads })).toEqual({ read: 5, in: 4, known: 1, to_fix: 0, dropped: 0 });
    expect(tickets(rows, "ticket_no", "received_on", "finished_on", "model", "reel_kind", "water", "labour_min", "warranty")).toEqual([
      ["004417", "2024-03-12", "2024-03-29", "EKHOLT 50", "spinning", "salt", 72, false], ["004418", "2024-03-12", "2024-04-02", "DOVEKIN25", "spinning", "fresh", 24, null],
      ["004419", "2024-03-13", null, "OMBRY 8", "fly", "brackish", 33, true], ["004420", "2024-03-14", "2024-03-14", "PIPSEDGE", null, "fresh", null, null],
    ]);
    expect(findings(rows)).toEqual([
      ["004417", "line_roller_bearing", "replaced", 1, null], ["004418", "bail_spring", "replaced", 1, null],
      ["004419", "fly_oneway", "replaced", 1, null], ["004419", "fly_hub_seal", "replaced", 1, null],
    ]);
  });
});

describe("9.5 the web form", () => {
  test("gives a ticket for each of two reels in a row with their own time, complaint and part", async () => {
    const { rows, reads } = await taken("web-form.csv");
    expect(ends({ rows, reads })).toEqual({ read: 5, in: 4, known: 0, to_fix: 1, dropped: 0 });
    expect(tickets(rows, "received_on", "model", "water", "use_days", "rinse", "labour_min", "outcome")).toEqual([
      ["2025-11-02", "Winbeck 40", "salt", null, "always", 72, "returned"], ["2025-11-03", "Vesik 100 LH", null, 30, "sometimes", 45, "returned"],
      ["2025-11-03", "Bruskar 80", "salt", 120, "never", 135, "waiting"],
      ["2025-11-04", "Withy 5", "fresh", 10, null, 30, "returned"], ["2025-11-04", "Fernhowe 7", "fresh", 10, null, 30, "returned"],
    ]);
    expect(tickets(rows, "complaint").slice(3)).toEqual([["clicks gone"], ["sticky"]]);
    expect(findings(rows).slice(-2).map(([, place]) => place)).toEqual(["fly_click_spring", "fly_drag_disc"]);
    expect(findings(rows)).toContainEqual([rows["tickets"]?.[2]?.["ticket_no"], "body_seal", "replaced", 1, null]);
  });
  test("leaves the reel nobody knows to fix", async () => {
    expect(fixes((await taken("web-form.csv")).reads)).toEqual([[6, "Reel make & model", "dont know, black one", "“dont know, black one” does not say which reel it is; write its model"]]);
  });
  test("keeps what fits none of our words in the note", async () => {
    const notes = tickets((await taken("web-form.csv")).rows, "note").flat().join(" ");
    for (const kept of ["last service?: lots", "fish?: lake + estuary", "rinse?: no need"]) expect(notes).toContain(kept);
  });
});

describe("9.6 the stock sheet", () => {
  test("counts packs and pieces, shares out a pack's price and writes a size our way", async () => {
    const { rows, reads, questions } = await taken("stock-sheet.csv");
    expect(questions.map(({ about, best }) => [about, best])).toEqual([["currency", "cu"]]);
    expect(ends({ rows, reads })).toEqual({ read: 5, in: 2, known: 0, to_fix: 2, dropped: 1 });
    expect(rows["parts"]).toEqual([
      { part_no: "line roller brg 4x7x2.5 / MR74", name: "line roller brg", family: "ball bearing", supplier: "FLI", unit_cost: 1.1, pack_qty: 10, on_hand: 38, size: "4x7x2.5", source_line: 2 },
      { part_no: "LR brg 7x4x2.5", name: "LR brg", family: "ball bearing", supplier: "Aldersund", unit_cost: 2.4, pack_qty: 1, size: "4x7x2.5", source_line: 3 },
    ]);
  });
  test("converts no currency, counts no bag, and sets the assortment aside", async () => {
    const { reads } = await taken("stock-sheet.csv");
    expect(fixes(reads)).toEqual([
      [4, "Price", "EUR 11,50", "“EUR 11,50” is in another currency than the other amounts (cu); nothing is converted, so write it in cu"],
      [5, "In stock", "a bag", "“a bag” is no number of pieces; write how many there are, such as 12"],
    ]);
    expect(reads[0]?.remarks).toContain("1 row: set aside: one line for several parts.");
  });
});
