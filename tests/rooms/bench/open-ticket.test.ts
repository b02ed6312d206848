import { describe, expect, onTestFinished, test } from "vitest";
import type { BenchStore } from "../../../src/records/bench-log/bench-store.ts";
import { MemoryBenchShelf, openMemoryBench } from "../../../src/records/bench-log/memory-bench.ts";
import { OpenTicket } from "../../../src/rooms/bench/open-ticket.svelte.ts";

async function opened(shelf: MemoryBenchShelf, id: string, change: Partial<BenchStore> = {}): Promise<OpenTicket> {
  const ticket = new OpenTicket({ ...openMemoryBench(shelf), ...change }, id);
  onTestFinished(ticket.follow());
  await expect.poll(() => ticket.status).not.toBe("opening");
  return ticket;
}

async function begun(values: Record<string, string | null> = {}) {
  const shelf = new MemoryBenchShelf(), { id } = await openMemoryBench(shelf).begin(values);
  return { shelf, id, kept: () => Object.fromEntries([...(shelf.tickets.get(id)?.entries ?? [])].map(([field, { value }]) => [field, value])) };
}

describe("a ticket on the screen", () => {
  test("shows a field at once and has it on the disk right after, the last of what was typed", async () => {
    const { shelf, id, kept } = await begun(), ticket = await opened(shelf, id);
    for (const text of ["h", "ha", "hard"]) ticket.set("complaint", text);
    expect([ticket.text("complaint"), ticket.saved]).toEqual(["hard", false]);
    await ticket.settled();
    expect([ticket.saved, kept()]).toEqual([true, { complaint: "hard" }]);
    expect(ticket.overwritten).toBeNull();
  });

  test("keeps not known apart from never asked", async () => {
    const { shelf, id, kept } = await begun(), ticket = await opened(shelf, id);
    ticket.set("water", null);
    ticket.set("rinse", "never");
    ticket.set("rinse", undefined);
    await ticket.settled();
    expect([ticket.isUnknown("water"), ticket.isUnknown("rinse"), kept()]).toEqual([true, false, { water: null }]);
  });

  test("all fine is one writing for the whole group, and can be taken back", async () => {
    let writings = 0;
    const { shelf, id, kept } = await begun(), store = openMemoryBench(shelf);
    const ticket = await opened(shelf, id, { write: (...given) => { writings += 1; return store.write(...given); } });
    ticket.allFine(["rotor", "body"]);
    await ticket.settled();
    expect([writings, Object.keys(kept()).length]).toEqual([1, 4]);
    ticket.takeAway([{ position: "rotor", line: 1 }, { position: "body", line: 1 }]);
    await ticket.settled();
    expect(kept()).toEqual({});
  });
});

describe("in two windows", () => {
  test("what one writes shows in the other, and different fields never meet", async () => {
    const { shelf, id, kept } = await begun({ model: "Withy 5" }), here = await opened(shelf, id), there = await opened(shelf, id);
    here.set("water", "salt");
    there.set("rinse", "never");
    await Promise.all([here.settled(), there.settled()]);
    await expect.poll(() => [here.text("rinse"), there.text("water")]).toEqual(["never", "salt"]);
    expect([kept(), here.overwritten, there.overwritten]).toEqual([{ model: "Withy 5", water: "salt", rinse: "never" }, null, null]);
  });

  test("the same field written in both at once is told to the one that wrote last, with what it wrote over", async () => {
    const { shelf, id, kept } = await begun(), here = await opened(shelf, id), there = await opened(shelf, id);
    here.set("water", "salt");
    there.set("water", "fresh");
    await Promise.all([here.settled(), there.settled()]);
    const [stands, told] = kept()["water"] === "fresh" ? ["fresh", there] : ["salt", here];
    expect(told.overwritten).toEqual({ field: "water", other: stands === "fresh" ? "salt" : "fresh", ours: stands });
  });

  test("a field is not held against what this window itself wrote a moment before", async () => {
    const { shelf, id } = await begun(), store = openMemoryBench(shelf), gate: (() => void)[] = [];
    const ticket = await opened(shelf, id, { write: async (...given) => { await new Promise<void>((done) => gate.push(done)); return store.write(...given); } });
    ticket.set("complaint", "a");
    ticket.set("complaint", "ab");
    gate.shift()?.();
    await expect.poll(() => gate.length).toBe(1);
    gate.shift()?.();
    await ticket.settled();
    expect([ticket.text("complaint"), ticket.overwritten]).toEqual(["ab", null]);
  });

  test("writing into a ticket that another window finished says so, shows what was not kept, and changes nothing", async () => {
    const { shelf, id, kept } = await begun({ model: "Withy 5" }), store = openMemoryBench(shelf), ticket = await opened(shelf, id, { onChange: () => () => undefined });
    await store.finish(id, "b");
    ticket.set("water", "salt");
    await expect.poll(() => ticket.fault).toMatch(/finished or thrown away in another window/);
    expect([kept(), ticket.unsaved, ticket.ticket?.batch_id]).toEqual([{ model: "Withy 5" }, [{ field: "water", value: "salt" }], "b"]);
  });
});

test("a field that cannot be written stays on the screen as not saved, and is written by the next try", async () => {
  let full = true;
  const { shelf, id, kept } = await begun(), store = openMemoryBench(shelf);
  const ticket = await opened(shelf, id, { write: (...given) => (full ? Promise.reject(new DOMException("full", "QuotaExceededError")) : store.write(...given)) });
  ticket.set("water", "salt");
  await expect.poll(() => ticket.fault).toMatch(/no room left/);
  await expect(ticket.settled()).rejects.toThrow(/no room/);
  expect([ticket.text("water"), ticket.saved]).toEqual(["salt", false]);
  full = false;
  ticket.retry();
  await ticket.settled();
  expect([ticket.fault, ticket.saved, kept()]).toEqual([null, true, { water: "salt" }]);
});
