import { afterAll, beforeAll, expect, test } from "vitest";
import { restock } from "../src/answers/stock/restock.ts";
import { readServiceLevels, SERVICE_LEVELS_SETTING, serviceLevelsText, USUAL_LEVELS } from "../src/answers/stock/service-levels.ts";
import type { Engine } from "../src/db/engine.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { openMemoryBench } from "../src/records/bench-log/memory-bench.ts";
import { MemoryShelf, openMemoryLedger } from "../src/records/ledger/memory-ledger.ts";
import { lookHere } from "../src/records/looking/look.ts";
import { readFile } from "../src/records/reading/read-file.ts";
import { Session } from "../src/session.svelte.ts";
import { WRITING_SETTING } from "../src/way-of-writing.ts";

let engine: Engine;
beforeAll(async () => void (engine = await openNodeEngine()));
afterAll(() => engine.close());

async function started(shelf: MemoryShelf): Promise<Session> {
  const session = new Session();
  await openMemoryLedger(shelf).keepSetting("demo", "no");
  await session.start({
    openLedger: async () => openMemoryLedger(shelf), openBench: async () => openMemoryBench(), openEngine: async () => engine, read: readFile, look: lookHere, demoFiles: async () => [],
    keeping: async () => "kept", alone: (work) => work(), day: () => "2026-11-25",
  });
  return session;
}

test("the way of writing and the service levels are kept over a restart, and the order advice goes by the levels", async () => {
  const shelf = new MemoryShelf(), session = await started(shelf);
  expect([session.way_of_writing, session.service_levels]).toEqual([null, USUAL_LEVELS]);
  await session.keepWriting("de-de");
  await session.keepServiceLevels({ A: 0.99, B: 0.9, C: 0.5 });
  const again = await started(shelf);
  expect([again.way_of_writing, again.service_levels]).toEqual(["de-DE", { A: 0.99, B: 0.9, C: 0.5 }]);
  expect((await restock(engine, { as_of: "2026-11-25", ...again.stock_words })).settings.targets).toEqual({ A: 0.99, B: 0.9, C: 0.5 });
  await again.keepWriting(null);
  expect((await started(shelf)).way_of_writing).toBeNull();
});

test("a level or a way that cannot be changes nothing", async () => {
  const session = await started(new MemoryShelf());
  await expect(session.keepServiceLevels({ ...USUAL_LEVELS, B: 1 })).rejects.toThrow("serviceLevelsText: the level of B must lie between 0.5 and 0.999, got 1");
  await expect(session.keepWriting("no locale")).rejects.toThrow(RangeError);
  expect([session.service_levels, session.way_of_writing]).toEqual([USUAL_LEVELS, null]);
});

test("damaged settings are said, and the usual ones count", async () => {
  const shelf = new MemoryShelf(), ledger = openMemoryLedger(shelf);
  await ledger.keepSetting(SERVICE_LEVELS_SETTING, "{\"A\": 3, \"B\": 0.7}");
  await ledger.keepSetting(WRITING_SETTING, "??");
  const session = await started(shelf);
  expect(session.service_levels).toEqual({ A: 0.95, B: 0.7, C: 0.8 });
  expect(session.trouble).toContain("How seldom a part of class A may run out was kept as 3, which cannot be; the usual 95 % counts.");
  expect(session.trouble).toContain("class C may run out was kept as nothing");
  expect(session.trouble).toContain("kept as “??”, which no browser knows");
  expect(readServiceLevels("[").faults[0]).toMatch(/^How seldom a part may run out cannot be read, so the usual levels count/);
  expect(readServiceLevels(serviceLevelsText(USUAL_LEVELS))).toEqual({ levels: USUAL_LEVELS, faults: [] });
});
