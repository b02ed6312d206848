import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Engine } from "../src/db/engine.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { openMemoryBench } from "../src/records/bench-log/memory-bench.ts";
import { MemoryShelf, openMemoryLedger } from "../src/records/ledger/memory-ledger.ts";
import { lookHere } from "../src/records/looking/look.ts";
import { readFile } from "../src/records/reading/read-file.ts";
import { Session } from "../src/session.svelte.ts";
import type { World } from "../src/world.ts";

const OWN = { name: "own.csv", blob: new Blob(["ticket_no,received_on,model\nX-1,2026-01-05,Withy 5\n"]) };
const never = new AbortController().signal, quiet = () => undefined;
const FAILED = "-- Positions that had failed.\n-- Columns: n bigint\nselect count(*) as n from inspected where failed order by n";

let engine: Engine;
beforeAll(async () => void (engine = await openNodeEngine()));
afterAll(() => engine.close());

/** Opens the app over one disk, with a sheet kept from the last time. */
async function opened(shelf: MemoryShelf, change: Partial<World> = {}): Promise<Session> {
  const session = new Session(), bench = openMemoryBench();
  await session.start({
    openLedger: async () => openMemoryLedger(shelf), openBench: async () => bench, openEngine: async () => engine, read: readFile, look: lookHere,
    demoFiles: async () => [{ name: "tickets.csv", blob: new Blob([readFileSync(new URL("../data/templates/tickets.csv", import.meta.url))]) }],
    keeping: async () => "kept", alone: (work) => work(), day: () => "2026-11-30", program: () => "0.1.0 (3fa9c1d2)", keptSheet: () => "a sheet", ...change,
  });
  return session;
}

describe("what a sheet is worked out from", () => {
  test("is told before the engine is there, and is the same once it is and when the app is opened again", async () => {
    const shelf = new MemoryShelf(), first = await (await opened(shelf)).sheetKey(), again = await opened(shelf);
    expect(first).toMatch(/^[0-9a-f]{64}$/);
    expect([again.opening_key, await again.sheetKey()]).toEqual([first, first]);
  });

  test("is something else on another day, with another program, after an import and after a setting", async () => {
    const shelf = new MemoryShelf(), session = await opened(shelf), keys = [await session.sheetKey()];
    keys.push((await opened(shelf, { day: () => "2026-12-01" })).opening_key, (await opened(shelf, { program: () => "0.1.0 (00000000)" })).opening_key);
    await session.bringIn([OWN], never, quiet);
    keys.push(await session.sheetKey());
    await session.keepServiceLevels({ A: 0.99, B: 0.9, C: 0.8 });
    keys.push(await session.sheetKey());
    expect(new Set(keys).size).toBe(5);
    expect((await opened(shelf)).opening_key).toBe(keys[4]);
  });

  test("is not known of an import that cannot be read back, so that a sheet with it is none of today", async () => {
    const shelf = new MemoryShelf(), whole = await (await opened(shelf)).sheetKey(), stored = shelf.kept[0]?.contents.get("tickets") as Uint8Array;
    stored[30] = (stored[30] ?? 0) ^ 4;
    const session = await opened(shelf);
    expect(session.damaged.length).toBe(1);
    expect(session.opening_key).toBe(whole);
    expect(await session.sheetKey()).not.toBe(whole);
  });

  test("is not told by a program that runs from its sources", async () => {
    const session = await opened(new MemoryShelf(), { program: () => null });
    expect([session.opening_key, await session.sheetKey()]).toEqual([null, null]);
  });
});

test("what opening puts off is there when it is asked for, and before files come in", async () => {
  const shelf = new MemoryShelf();
  await opened(shelf);
  const session = await opened(shelf), put_off = () => engine.rows("select count(*)::integer as n from put_off");
  expect(await put_off()).toEqual([{ n: 1 }]);
  expect(await session.engine?.rows(FAILED)).toHaveLength(1);
  expect(await put_off()).toEqual([{ n: 0 }]);
  const other = await opened(shelf);
  await other.bringIn([OWN], never, quiet);
  expect(await put_off()).toEqual([{ n: 0 }]);
});
