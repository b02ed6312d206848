import { describe, expect, test } from "vitest";
import { TABLES } from "../../../src/records/columns.ts";
import { mappingFrom } from "../../../src/records/reading/mapping.ts";
import { found, read } from "./reading.ts";

describe("the table is known by its headings", () => {
  test.each(TABLES.map(({ name, columns }) => [name, columns.map((column) => column.name)] as const))("%s has its own columns in any order", (name, columns) => {
    const reversed = [...columns].reverse();
    expect(found(reversed)).toEqual({ tables: [name], left_out: [], columns: Object.fromEntries(reversed.map((column, at) => [column, at])) });
  });
  test.each([
    ["Ticket No.; Date In; Date Out; Make; Model; Mins", "tickets", "ticket_no received_on finished_on maker model labour_min"],
    ["job no;received;model;exposure_days;hours", "tickets", "ticket_no received_on model salt_days labour_min"],
    ["ticket;part;failed;quantity", "findings", "ticket_no position grade qty"],
    ["SKU;Description;In stock;Vendor;Lead time", "parts", "part_no name on_hand supplier lead_days"],
    ["vendor;carriage;lead_days", "suppliers", "supplier order_cost lead_days"],
    ["PO number;supplier;part no;ordered;received;pcs", "orders", "order_no supplier part_no ordered_on arrived_on qty"],
    ["brand;model;part;part_no;qty", "fits", "maker model position part_no qty"],
    ["brand;model;type;sealed body", "models", "maker model reel_kind sealed"],
  ])("%s is read as %s", (headings, name, columns) => {
    const result = found(headings.split(";"));
    expect(result.tables).toEqual([name]);
    expect(Object.entries(result.columns).sort(([, a], [, b]) => a - b).map(([column]) => column).join(" ")).toBe(columns);
    expect(result.left_out).toEqual([]);
  });
  test("the file's name decides only between tables that fit equally", () => {
    expect(found(["supplier", "part_no"], "orders.csv").tables).toEqual(["parts"]);
    expect(found(["maker", "reel_kind"], "models.csv").tables).toEqual(["models"]);
    expect(found(["maker", "reel_kind"], "tickets.csv").tables).toEqual(["tickets"]);
  });
  test("a column's own name wins over a synonym, and the synonym is left out by name", () => {
    expect(found(["job no", "ticket_no", "received_on", "model"])).toMatchObject({ columns: { ticket_no: 1 }, left_out: ["job no"] });
  });
  test("of two equal headings the first is read and the second left out", () => {
    expect(found(["ticket_no", "received_on", "model", "note", "Note"])).toMatchObject({ columns: { note: 3 }, left_out: ["Note"] });
  });
  test("a till's list of sales is not taken for a price list, unless the file's name says that it is one", () => {
    const till = ["doc_no", "doc_date", "line", "sku", "description", "qty", "unit_price", "net", "cashier"];
    expect(() => found(till, "till.csv")).toThrow("Most of its headings are not known, so it cannot be told what table this is: doc_no, doc_date, line");
    expect(found(till, "parts.csv").tables).toEqual(["parts"]);
  });
  test("headings that name parts of JavaScript objects are words like any other", () => {
    expect(found(["__proto__", "constructor", "ticket_no", "received_on", "model"])).toMatchObject({ tables: ["tickets"], left_out: ["__proto__", "constructor"] });
  });
});

describe("a sheet with one row a finding", () => {
  test("holds tickets and findings when number, day, model and part are there", () => {
    const { tables, columns } = found(["ticket", "date_in", "model", "part", "failed", "note"]);
    expect(tables).toEqual(["tickets", "findings"]);
    expect(columns).toEqual({ ticket_no: 0, received_on: 1, model: 2, position: 3, grade: 4, note: 5 });
  });
  test("makes one ticket of the rows with its number, and takes its empty cells from any of them", async () => {
    const { staged, rows_read, rejects } = await read("ticket,date_in,model,part,qty,mins\n1,2026-01-02,A,ar_clutch,1,\n1,2026-01-02,A,rotor,2,55\n2,2026-01-03,A,rotor,1,30\n");
    expect(staged["tickets"]?.map((row) => [row["ticket_no"], row["labour_min"], row["source_line"]])).toEqual([["1", 55, 2], ["2", 30, 4]]);
    expect(staged["findings"]?.map((row) => [row["ticket_no"], row["position"], row["qty"]])).toEqual([["1", "ar_clutch", 1], ["1", "rotor", 2], ["2", "rotor", 1]]);
    expect([rows_read, rejects]).toEqual([3, []]);
  });
  test("puts a row that contradicts its ticket on the list, whole", async () => {
    const { staged, rejects } = await read("ticket,date_in,model,part\n1,2026-01-02,A,ar_clutch\n1,2026-01-09,A,rotor\n");
    expect(staged["findings"]).toHaveLength(1);
    expect(rejects).toMatchObject([{ file: "tickets.csv", line: 3, column: "date_in", value: "2026-01-09", reason: "line 2 says 2026-01-02 for the same ticket" }]);
  });
  test("takes a row without a finding as its ticket alone", async () => {
    const { staged, rows_known, rows_to_fix } = await read("ticket,date_in,model,part,grade\n1,2026-01-02,A,,\n1,2026-01-02,A,rotor,2\n1,2026-01-02,A,,\n");
    expect([staged["tickets"]?.length, staged["findings"]?.length, rows_known, rows_to_fix]).toEqual([1, 1, 1, 0]);
  });
});

describe("mapping.json", () => {
  const mapping = mappingFrom(JSON.stringify({
    columns: { Werk: "ticket_no", Tag: "received_on", Typ: "model", Teil: "position", Zeit: "labour_hours", Kunde: null },
    values: { position: { ring_North: "line_roller" } },
    constants: { job: "full service" },
  }));
  test("gives headings, words and constants their meaning", async () => {
    const { staged, remarks } = await read("Werk,Tag,Typ,Teil,Zeit,Kunde\n1,2026-01-02,A,RING_north,1.5,Ann\n", "x.csv", { mapping });
    expect(staged["tickets"]?.[0]).toMatchObject({ ticket_no: "1", job: "full service", labour_min: 90 });
    expect(staged["findings"]?.[0]).toMatchObject({ position: "line_roller" });
    expect(remarks.join(" ")).toContain("job is “full service” in every row, as mapping.json says.");
    expect(remarks.join(" ")).toContain("Left out: Kunde");
  });
  test.each([
    ["{", "mapping.json is not valid JSON."],
    ["[]", "mapping.json does not hold an object with columns, values and constants."],
    ['{"column":{}}', "mapping.json holds “column”, which is neither columns, values nor constants."],
    ['{"columns":{"a":"price_in_yen"}}', "mapping.json names the column “price_in_yen”, which none of our tables has."],
    ['{"values":{"position":["a"]}}', "In mapping.json, “position” is not a list of names and values."],
    ['{"constants":{"job":["a"]}}', "In mapping.json, the constant “job” is not a text."],
  ])("%s is refused: %s", (text, sentence) => expect(() => mappingFrom(text)).toThrow(sentence));
});
