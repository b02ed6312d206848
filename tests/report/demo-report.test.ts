import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import Papa from "papaparse";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { main } from "../../src/report/main.ts";

const DEMO = resolve(import.meta.dirname, "../../data/demo");
let home: string;
beforeAll(async () => { home = await mkdtemp(join(tmpdir(), "demo-report-")); });
afterAll(() => rm(home, { recursive: true, force: true }));

async function made(name: string): Promise<Map<string, string>> {
  const log = vi.spyOn(console, "log").mockReturnValue();
  try {
    expect(await main([DEMO, "--out", join(home, name), "--as-of", "2026-01-05"])).toBe(0);
  } finally {
    log.mockRestore();
  }
  const names = (await readdir(join(home, name))).sort();
  return new Map(await Promise.all(names.map(async (file) => [file, await readFile(join(home, name, file), "utf8")] as const)));
}

test("the report on the demo shop is whole, the same twice, and holds what its rooms show", { timeout: 240_000 }, async () => {
  const first = await made("one");
  expect(await made("two")).toEqual(first);
  const table = (file: string) => Papa.parse<Record<string, string>>(first.get(file) ?? "", { header: true, skipEmptyLines: true }).data;
  expect(table("rejected.csv")).toEqual([]);
  expect(table("failure-rates.csv").find((row) => row.position === "ar_clutch" && row.model === "Whinbeck 40" && row.came_in === "*" && row.denominator === "coverage"))
    .toMatchObject({ maker: "Brackhelm", rate: expect.stringMatching(/^0\.2/), q_value: expect.stringMatching(/e-|^0\.0000/) });
  expect(table("restock.csv").filter((row) => row.status === "refused").every((row) => row.order_qty === "" && row.reason !== "")).toBe(true);
  expect(table("restock.csv").some((row) => Number(row.order_qty) > 0 && Number(row.cost) > 0)).toBe(true);
  expect(table("labour.csv").find((row) => row.job === "full service" && row.reel_kind === "spinning" && row.model === "*"))
    .toMatchObject({ maker: "*", n: expect.stringMatching(/^\d{4}$/), median: expect.stringMatching(/^6|^7/) });
  const told = JSON.parse(first.get("summary.json") ?? "{}") as { counts: { tickets: number }; morning: { to_order: unknown[]; most_failing: unknown[] } };
  expect(told.counts.tickets).toBeGreaterThan(3000);
  expect([told.morning.to_order.length > 0, told.morning.most_failing.length]).toEqual([true, 5]);
});
