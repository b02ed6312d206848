import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { RULE_CHANGES_SETTING } from "../src/answers/rule-changes/rule-changes.ts";
import type { Engine } from "../src/db/engine.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { openMemoryBench } from "../src/records/bench-log/memory-bench.ts";
import { MemoryShelf, openMemoryLedger } from "../src/records/ledger/memory-ledger.ts";
import { lookHere } from "../src/records/looking/look.ts";
import { readFile } from "../src/records/reading/read-file.ts";
import { Session } from "../src/session.svelte.ts";

const TICKETS = { name: "tickets.csv", blob: new Blob([readFileSync(new URL("../data/templates/tickets.csv", import.meta.url))]) };
const OWN = { name: "own.csv", blob: new Blob(["ticket_no,received_on,model\nX-1,2026-01-05,Withy 5\n"]) };
const HABIT = { from: "2024-07-01", position: "drag_knob_seal", text: "changed at every service" };
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

test("a change of habit is kept over a restart, and refused without a day", async () => {
  const shelf = new MemoryShelf(), session = await started(shelf);
  await session.keepRuleChanges([HABIT]);
  await expect(session.keepRuleChanges([{ ...HABIT, from: "" }])).rejects.toThrow(RangeError);
  expect((await started(shelf)).rule_changes).toEqual([HABIT]);
});

test("the demo's changes of habit go out with the demo, so that they are never drawn over a shop's own records", async () => {
  const shelf = new MemoryShelf(), session = await started(shelf);
  await session.keepRuleChanges([HABIT]);
  await session.bringIn([OWN], new AbortController().signal, () => undefined);
  expect([session.demo, session.rule_changes]).toEqual([false, []]);
});

test("a list that cannot be read is told and draws nothing", async () => {
  const shelf = new MemoryShelf();
  await openMemoryLedger(shelf).keepSetting(RULE_CHANGES_SETTING, "[{]");
  const session = await started(shelf);
  expect(session.rule_changes).toEqual([]);
  expect(session.trouble).toMatch(/^The list of rule changes cannot be read/);
});
