import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { HandGroup } from "../src/answers/interchange/hand-groups.ts";
import type { OrderMark } from "../src/answers/stock/order-marks.ts";
import type { Engine } from "../src/db/engine.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { openMemoryBench } from "../src/records/bench-log/memory-bench.ts";
import { MemoryShelf, openMemoryLedger } from "../src/records/ledger/memory-ledger.ts";
import { lookHere } from "../src/records/looking/look.ts";
import { readFile } from "../src/records/reading/read-file.ts";
import { Session } from "../src/session.svelte.ts";

const TICKETS = { name: "tickets.csv", blob: new Blob([readFileSync(new URL("../data/templates/tickets.csv", import.meta.url))]) };
const PARTS = { name: "parts.csv", blob: new Blob(["part_no,name\nX-1,Screw\nX-2,Screw\n"]) };
const JOIN: HandGroup = { kind: "join", part_nos: ["X-1", "X-2"] };
const MARK: OrderMark = { part_no: "X-1", supplier: null, qty: 3, ordered_on: "2026-11-01", arrived_on: null, seen: { on_hand: null, on_order: null } };
let engine: Engine;
beforeAll(async () => void (engine = await openNodeEngine()));
afterAll(() => engine.close());

async function started(shelf: MemoryShelf): Promise<Session> {
  const session = new Session();
  await session.start({
    openLedger: async () => openMemoryLedger(shelf), openBench: async () => openMemoryBench(), openEngine: async () => engine, read: readFile, look: lookHere, demoFiles: async () => [TICKETS],
    keeping: async () => "kept", alone: (work) => work(), day: () => "2026-11-25",
  });
  return session;
}
const groups = () => engine.rows("-- Groups.\nselect part_no, interchange from interchange order by part_no");

test("parts the owner joins are one at once and after a restart, and two again when it is taken back", async () => {
  const shelf = new MemoryShelf(), session = await started(shelf);
  await session.bringIn([PARTS], new AbortController().signal, () => undefined);
  const version = session.version;
  await session.keepHandGroups([JOIN]);
  expect([session.version > version, session.hand_groups, await groups()]).toEqual([true, [JOIN], [{ part_no: "X-1", interchange: "X-1" }, { part_no: "X-2", interchange: "X-1" }]]);
  const again = await started(shelf);
  expect([again.hand_groups, await groups()]).toEqual([[JOIN], [{ part_no: "X-1", interchange: "X-1" }, { part_no: "X-2", interchange: "X-1" }]]);
  await expect(again.keepHandGroups([{ kind: "join", part_nos: ["X-1"] }])).rejects.toThrow(RangeError);
  await again.keepHandGroups([]);
  expect(await groups()).toEqual([{ part_no: "X-1", interchange: "X-1" }, { part_no: "X-2", interchange: "X-2" }]);
});

test("orders marked by hand are kept over a restart, and go out with the demo", async () => {
  const shelf = new MemoryShelf(), session = await started(shelf);
  await session.keepOrderMarks([MARK]);
  expect([session.stock_words.marks, (await started(shelf)).order_marks]).toEqual([[MARK], [MARK]]);
  await session.bringIn([PARTS], new AbortController().signal, () => undefined);
  expect([session.demo, session.order_marks]).toEqual([false, []]);
});
