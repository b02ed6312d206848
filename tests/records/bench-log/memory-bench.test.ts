import { describe, expect, test } from "vitest";
import { MemoryBenchShelf, openMemoryBench } from "../../../src/records/bench-log/memory-bench.ts";
import { shownTickets } from "../../../src/records/bench-log/written.ts";
import { BENCH_CONTRACT } from "./contract.ts";

describe("a bench log in memory", () => {
  test.each(BENCH_CONTRACT)("$claim", async ({ check }) => {
    const shelf = new MemoryBenchShelf();
    await expect(check(async () => openMemoryBench(shelf))).resolves.toBeUndefined();
  });

  test("tells other windows what changed, until they stop listening", async () => {
    const shelf = new MemoryBenchShelf(), [one, two] = [openMemoryBench(shelf), openMemoryBench(shelf)], told: string[] = [];
    const stop = two.onChange(() => told.push("changed"));
    await one.begin({});
    stop();
    await one.begin({});
    expect(told).toEqual(["changed"]);
  });
});

test("all tickets at the bench are shown and the thirty finished last, however many there are", () => {
  const finished = Array.from({ length: 40 }, (_, at) => ({ id: `f${at}`, finished_at: `2026-01-01T00:00:${String(at).padStart(2, "0")}Z` }));
  const shown = shownTickets([{ id: "open", finished_at: null }, ...finished]).map(({ id }) => id);
  expect([shown.length, shown[0], shown[1], shown.at(-1)]).toEqual([31, "open", "f10", "f39"]);
});
