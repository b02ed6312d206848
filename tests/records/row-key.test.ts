import { describe, expect, test } from "vitest";
import { table } from "../../src/records/columns.ts";
import { KeyCounter } from "../../src/records/key-counter.ts";
import { KEY_LETTERS, RowKeys } from "../../src/records/row-key.ts";

const values = (name: string, cells: Record<string, string | number | boolean>) => table(name).columns.map((column) => cells[column.name] ?? null);
const key = (name: string, cells: Record<string, string | number | boolean>, guessed: string[] = []) => new RowKeys(table(name)).keyOf(values(name, cells), guessed);

describe("the key of a row", () => {
  // Written down when the first records were kept: another value would make every kept row a new one.
  test("is this for this row, for ever", () => {
    expect(key("parts", { part_no: "P-1", name: "clutch", unit_cost: 29.5, essential: true })).toBe("05zWXIvGaMQ");
    expect(key("findings", { ticket_no: "R-1", position: "ar_clutch", qty: 1 })).toBe("xu-IM9RbuC8");
  });
  test("is eleven letters of base64url", () => {
    for (let at = 0; at < 2000; at += 1) expect(key("parts", { part_no: `P-${at}` })).toMatch(new RegExp(`^[\\w-]{${KEY_LETTERS}}$`));
  });
  test("differs when a cell differs, moves to another column or gives letters to its neighbour", () => {
    const rows = [{ part_no: "P", name: "ab" }, { part_no: "P", name: "ac" }, { part_no: "P", supplier: "ab" }, { part_no: "Pa", name: "b" }, { part_no: "P" }, { part_no: "P", essential: true }, { part_no: "P", essential: false }];
    expect(new Set(rows.map((row) => key("parts", row))).size).toBe(rows.length);
  });
  test("does not depend on empty cells, so a column more keeps the keys", () => {
    const parts = table("parts"), wider = { ...parts, columns: [...parts.columns, { name: "colour", kind: "text" as const, meaning: "" }] };
    const cells = values("parts", { part_no: "P-1", name: "clutch" });
    expect(new RowKeys(wider).keyOf([...cells, null])).toBe(new RowKeys(parts).keyOf(cells));
  });
  test("leaves guesses out", () => {
    const row = { ticket_no: "R-1", received_on: "2026-01-01", model: "A", complaint: "grinding" };
    expect(key("tickets", { ...row, came_in: "complaint" }, ["came_in"])).toBe(key("tickets", row));
    expect(key("tickets", { ...row, came_in: "complaint" })).not.toBe(key("tickets", row));
  });
  test("counts equal findings of one file, and equal tickets not", () => {
    const findings = new RowKeys(table("findings")), finding = values("findings", { ticket_no: "R-1", position: "rotor" });
    const tickets = new RowKeys(table("tickets")), ticket = values("tickets", { ticket_no: "R-1" });
    expect(new Set([1, 2, 3].map(() => findings.keyOf(finding))).size).toBe(3);
    expect(new Set([1, 2, 3].map(() => tickets.keyOf(ticket))).size).toBe(1);
  });
  test("is never shared by any two of half a million short rows that differ by little", () => {
    const keys = new RowKeys(table("fits")), seen = new Set<string>();
    for (let one = 0; one < 700; one += 1) for (let other = 0; other < 715; other += 1) seen.add(keys.keyOf([null, `M${one}`, "rotor", `P${other}`, null]));
    expect(seen.size).toBe(700 * 715);
  });
});

test("a key counter counts as a Map does, over many keys and when it grows", () => {
  const counter = new KeyCounter(), map = new Map<string, number>();
  for (let at = 0; at < 60_000; at += 1) {
    const high = Math.imul(at % 20_011, 0x9e3779b1) >>> 0, low = at % 3 === 0 ? 0 : high & 7;
    const nth = (map.get(`${high} ${low}`) ?? 0) + 1;
    map.set(`${high} ${low}`, nth);
    expect(counter.count(high, low)).toBe(nth);
  }
});
