import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { BEARINGS, MODELS, STOCK } from "../../data/demo-shop/settings.ts";
import { COLUMNS } from "../../data/demo-shop/rows.ts";
import { DEMO_SEED, makeDemo } from "../../data/make-demo.ts";
import type { DemoShop } from "../../data/make-demo.ts";
import { TABLES } from "../../src/records/columns.ts";
import { actions, bearings, jobs, modes, orings, oringsMetric, position, positionNamed } from "../../src/records/vocabulary.ts";

const DATA = resolve(import.meta.dirname, "../../data");
type Line = Record<string, string>;
const parse = (path: string) => Papa.parse<Line>(readFileSync(resolve(DATA, path), "utf8"), { header: true, skipEmptyLines: true });
const read = (name: string) => parse(`demo/${name}.csv`).data;
const tickets = read("tickets"), findings = read("findings"), parts = read("parts"), fits = read("fits"), orders = read("orders");
const days = (iso: string | undefined) => Date.parse(`${iso ?? ""}T00:00:00Z`) / 86_400_000;

describe("templates and demo tables", () => {
  test("carry the columns of the records, in their order, but none that only the importer writes", () => {
    for (const { name, columns } of TABLES) {
      const names = columns.filter(({ made }) => !made).map((column) => column.name);
      expect([...COLUMNS[name]], name).toEqual(names);
      expect(parse(`demo/${name}.csv`).meta.fields, name).toEqual(names);
      const template = parse(`templates/${name}.csv`);
      expect([template.meta.fields, template.data.length], name).toEqual([names, 1]);
    }
  });

  test("hold only words of the lists, numbers in range and references that exist", () => {
    const numbers = new Set(tickets.map((row) => row["ticket_no"])), known = new Set(parts.map((row) => row["part_no"]));
    const modeWords = new Set(modes.map((row) => row.mode)), jobWords = new Set<string>(jobs.map((row) => row.job)), actionWords = new Set<string>(actions.map((row) => row.action));
    expect(numbers.size).toBe(tickets.length);
    expect(tickets.filter((row) => !jobWords.has(row["job"] ?? "") || !(Number(row["use_days"]) >= Number(row["salt_days"])))).toEqual([]);
    expect(tickets.filter((row) => row["finished_on"] !== "" && days(row["finished_on"]) < days(row["received_on"]))).toEqual([]);
    expect(tickets.filter((row) => (row["outcome"] === "waiting") !== (row["finished_on"] === "") || (row["labour_min"] === "") !== (row["finished_on"] === ""))).toEqual([]);
    expect(findings.filter((row) => !numbers.has(row["ticket_no"]) || positionNamed(row["position"] ?? "") !== row["position"])).toEqual([]);
    expect(findings.filter((row) => !actionWords.has(row["action"] ?? "") || (row["mode"] !== "" && !modeWords.has(row["mode"] ?? "")))).toEqual([]);
    expect([...findings, ...fits, ...orders].filter((row) => row["part_no"] !== "" && !known.has(row["part_no"]))).toEqual([]);
    expect(findings.filter((row) => ["replaced", "wanted"].includes(row["action"] ?? "") !== Number(row["qty"]) >= 1)).toEqual([]);
  });

  test("find only positions that the reel's kind has and its model does not lack", () => {
    const kind = new Map(tickets.map((row) => [row["ticket_no"], row] as const)), absent = new Set(fits.filter((row) => row["qty"] === "0").map((row) => `${row["model"] ?? ""} ${row["position"] ?? ""}`));
    expect(absent.has("Yawlfell 15 ar_clutch")).toBe(true);
    expect(findings.filter((row) => {
      const ticket = kind.get(row["ticket_no"]), code = row["position"] ?? "";
      return !position(code).reel_kinds.some((one) => one === ticket?.["reel_kind"]) || absent.has(`${ticket?.["model"] ?? ""} ${code}`);
    })).toEqual([]);
  });

  test("tell of one reel by one serial: one model, and months that follow from the visit before", () => {
    const reels = new Map<string, Line[]>();
    for (const row of tickets) reels.set(row["serial"] ?? "", [...(reels.get(row["serial"] ?? "") ?? []), row]);
    expect([...reels.values()].filter((rows) => new Set(rows.map((row) => row["model"])).size > 1)).toEqual([]);
    const again = [...reels.values()].flatMap((rows) => rows.slice(1).map((row, i) => ({ row, before: rows[i] }))).filter(({ before }) => before?.["finished_on"] !== "");
    expect(again.length).toBeGreaterThan(1000);
    expect(again.filter(({ row, before }) => Math.abs((days(row["received_on"]) - days(before?.["finished_on"])) / 30.44 - Number(row["months_since_service"])) > 0.51)).toEqual([]);
  });

  test("keep the shelf of 5 January 2026, with the orders under way that it counts", () => {
    expect(parts.map((row) => [row["part_no"], row["on_hand"]])).toEqual(STOCK.map((line) => [line.part_no, String(line.on_hand)]));
    const under_way = orders.filter((row) => row["arrived_on"] === ""), counted = parts.filter((row) => Number(row["on_order"]) > 0);
    expect(under_way.map((row) => [row["part_no"], row["qty"]]).sort()).toEqual(counted.map((row) => [row["part_no"], row["on_order"]]).sort());
    expect(counted).toHaveLength(5);
    expect(orders.filter((row) => row["arrived_on"] !== "" && !(days(row["arrived_on"]) > days(row["ordered_on"]) && days(row["arrived_on"]) <= days("2026-01-05")))).toEqual([]);
    const line = new Map(parts.map((row) => [row["part_no"], row] as const));
    expect(orders.filter((row) => Number(row["qty"]) % Number(line.get(row["part_no"])?.["pack_qty"]) !== 0 || Number(row["qty"]) < Number(line.get(row["part_no"])?.["min_order_qty"]))
      .filter((row) => row["arrived_on"] !== "")).toEqual([]);
  });

  test("use sizes of the vocabulary's bearing and O-ring tables", () => {
    const sizes = new Set([...bearings.map((row) => `${row.bore_mm}x${row.outside_mm}x${row.width_shielded_mm}`), ...orings.map((row) => row.size), ...oringsMetric.map((row) => row.size)]);
    expect([...STOCK.flatMap((line) => (line.size === "" ? [] : [line.size])), ...BEARINGS.map((use) => use.size)].filter((size) => !sizes.has(size))).toEqual([]);
    expect(MODELS).toHaveLength(16);
  });
});

describe("the flat sheet", () => {
  let made: DemoShop | undefined;
  const shop = () => (made ??= makeDemo(DEMO_SEED));
  const part = (column: string, is: (cell: string) => boolean) => shop().flat.filter((row) => is(String(row[column] ?? ""))).length / shop().flat.length;

  test("has the dirt of a workshop's sheet at its rates, within four standard errors", () => {
    const rates: [string, (cell: string) => boolean, number][] = [
      ["Fished in", (cell) => cell === "", 0.12], ["Fished in", (cell) => cell === "both", 0.09], ["Fished in", (cell) => cell === "sea+lake", 0.04],
      ["Sea days", (cell) => cell === "", 0.35], ["Rinses", (cell) => cell === "" || cell === "?", 0.18], ["Time", (cell) => cell === "", 0.14],
      ["Time", (cell) => /[h:.]/.test(cell), 0.09], ["Time", (cell) => Number(cell) > 800, 0.05], ["Hand", (cell) => cell === "", 0.07], ["Tag", (cell) => cell !== "", 0.24],
      ["Reel", (cell) => !/\d/.test(cell), 0.06 + 0.22 * 0.04], ["Job", (cell) => cell.endsWith("a"), 0.008],
    ];
    const wrong = rates.map(([column, is, rate]) => ({ column, rate, seen: part(column, is) })).filter(({ rate, seen }) => Math.abs(seen - rate) > 4 * Math.sqrt((rate * (1 - rate)) / 3500) + 0.003);
    expect(wrong).toEqual([]);
  });

  test("has a row for every ticket, and about one in a hundred twice", () => {
    const numbers = shop().flat.map((row) => String(row["Job"])), once = new Set(numbers);
    expect(shop().tables.tickets.filter((row) => !once.has(String(row["ticket_no"])))).toEqual([]);
    expect((numbers.length - once.size) / numbers.length).toBeGreaterThan(0.006);
    expect((numbers.length - once.size) / numbers.length).toBeLessThan(0.019);
  });
});
