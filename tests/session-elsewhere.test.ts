import { afterAll, beforeAll, expect, test } from "vitest";
import { ELSEWHERE_SETTING, elsewhereOf } from "../src/answers/elsewhere/elsewhere.ts";
import type { Engine } from "../src/db/engine.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { openMemoryBench } from "../src/records/bench-log/memory-bench.ts";
import { MemoryShelf, openMemoryLedger } from "../src/records/ledger/memory-ledger.ts";
import { lookHere } from "../src/records/looking/look.ts";
import { readFile } from "../src/records/reading/read-file.ts";
import { Session } from "../src/session.svelte.ts";

const OWN = { name: "own.csv", blob: new Blob(["ticket_no,received_on,model\nX-1,2026-01-05,Withy 5\n"]) };
const OTHERS = elsewhereOf([{ shop: 1, position: "ar_clutch", maker: null, model: "Withy 5", condition: 259, inspected: 12, failed: 3 }], "2026-11-30");
let engine: Engine;
beforeAll(async () => void (engine = await openNodeEngine()));
afterAll(() => engine.close());

async function started(shelf: MemoryShelf): Promise<Session> {
  const session = new Session();
  await session.start({
    openLedger: async () => openMemoryLedger(shelf), openBench: async () => openMemoryBench(), openEngine: async () => engine, read: readFile, look: lookHere, demoFiles: async () => [],
    keeping: async () => "kept", alone: (work) => work(), day: () => "2026-11-30",
  });
  return session;
}

test("what other shops counted is kept over a restart, and goes when it is taken out", async () => {
  const shelf = new MemoryShelf(), session = await started(shelf);
  await session.bringIn([OWN], new AbortController().signal, () => undefined);
  await session.keepElsewhere(OTHERS);
  expect((await started(shelf)).elsewhere).toEqual(OTHERS);
  await session.keepElsewhere(null);
  expect([session.elsewhere, (await started(shelf)).elsewhere]).toEqual([null, null]);
});

test("what cannot be read of it is left out, and the owner is told", async () => {
  const shelf = new MemoryShelf();
  shelf.settings.set("demo", "no");
  shelf.settings.set(ELSEWHERE_SETTING, "{\"shops\": 3");
  const session = await started(shelf);
  expect([session.status, session.elsewhere]).toEqual(["ready", null]);
  expect(session.trouble).toMatch(/taken in from other shops cannot be read/);
});
