import type { Batch, Ledger, NewBatch, Reject } from "../../../src/records/ledger/ledger.ts";

/** Opens one more ledger on the same store, as another tab does. */
export type Open = () => Promise<Ledger>;
export interface Claim { readonly claim: string; check(open: Open): Promise<void> }

/** @throws {Error} telling both values; runs in a page as well as in Node */
export function same(found: unknown, wanted: unknown, what = "value"): void {
  const [a, b] = [JSON.stringify(found), JSON.stringify(wanted)];
  if (a !== b) throw new Error(`${what}: wanted ${b}, found ${a}`);
}

export async function refused(work: Promise<unknown>, name: string): Promise<Error> {
  const error = await work.then(() => null, (failed: unknown) => failed);
  if (!(error instanceof Error) || error.name !== name) throw new Error(`wanted ${name}, found ${String(error)}`);
  return error;
}

/** Bytes that do not compress to nothing and differ from seed to seed. */
export function bytes(length: number, seed: number): Uint8Array {
  let state = seed + 1;
  return Uint8Array.from({ length }, () => (state = (state * 48_271) % 2_147_483_647) % 256);
}

const reject = (line: number): Reject => ({ file: `t${line}.csv`, line, column: "grade", value: "<b>7</b>", reason: "a grade is 0 to 4" });

export function newBatch(seed: number, size = 200): NewBatch {
  return {
    imported_at: `2026-03-${String(10 + seed).padStart(2, "0")}T08:00:00Z`,
    origin: "files",
    files: [{
      file: `t${seed}.csv`, bytes: size, sha256: "ab".repeat(32), tables: ["tickets"], rows_read: 3, rows_new: 2, rows_known: 0,
      rows_to_fix: 1, rows_dropped: 0, unreadable: null, remarks: ["1 hour was read as minutes"],
    }],
    payloads: [{ table: "tickets", rows: seed, stream: bytes(size, seed) }, { table: "findings", rows: 1, stream: bytes(7, seed) }],
    rejects: [reject(seed)],
  };
}

const numbers = async (ledger: Ledger) => (await ledger.batches()).map(({ import_no }) => import_no);
const content = async (ledger: Ledger, batch: Batch) => Array.from(await ledger.payload(batch, "tickets"));

export const CONTRACT: readonly Claim[] = [
  {
    claim: "an import comes back as it was given, in this tab and in another",
    async check(open) {
      const ledger = await open(), given = newBatch(3);
      const kept = await ledger.append(given);
      for (const reader of [ledger, await open()]) {
        const [batch] = await reader.batches();
        if (!batch) throw new Error("nothing was kept");
        same({ ...batch, id: "" }, { ...kept, id: "" }, "manifest");
        same([batch.imported_at, batch.origin, batch.files], [given.imported_at, given.origin, given.files], "what was given");
        same(batch.tables.map(({ table, rows }) => [table, rows]), [["tickets", 3], ["findings", 1]], "tables");
        same(await content(reader, batch), Array.from(bytes(200, 3)), "tickets");
        same(Array.from(await reader.payload(batch, "findings")), Array.from(bytes(7, 3)), "findings");
      }
    },
  },
  {
    claim: "imports are numbered in order and no number is used twice, whatever is taken back",
    async check(open) {
      const ledger = await open(), other = await open();
      const [, second] = [await ledger.append(newBatch(1)), await other.append(newBatch(2))];
      same(await numbers(ledger), [1, 2]);
      await ledger.remove(second.id);
      await other.append(newBatch(3));
      same(await numbers(ledger), [1, 3]);
      await ledger.clear();
      same((await ledger.append(newBatch(4))).import_no, 4);
    },
  },
  {
    claim: "an import that is taken back is gone whole, the others stay; taking it back twice is no fault",
    async check(open) {
      const ledger = await open(), first = await ledger.append(newBatch(1)), second = await ledger.append(newBatch(2));
      await ledger.remove(first.id);
      await ledger.remove(first.id);
      same(await numbers(ledger), [2]);
      same((await ledger.rejects()).map(({ line }) => line), [2], "rejects");
      same(await content(ledger, second), Array.from(bytes(200, 2)));
      await refused(ledger.payload(first, "tickets"), "LedgerDamaged");
    },
  },
  {
    claim: "rows to fix come back word for word in the order of the imports; a file brought in again replaces its own",
    async check(open) {
      const ledger = await open();
      await ledger.append(newBatch(1));
      await ledger.append(newBatch(2));
      await ledger.append(newBatch(3));
      same(await ledger.rejects(), [reject(1), reject(2), reject(3)]);
      await ledger.append({ ...newBatch(2), rejects: [] });
      same(await ledger.rejects(), [reject(1), reject(3)]);
    },
  },
  {
    claim: "a setting is kept, changed, forgotten, and null when nobody set it",
    async check(open) {
      const ledger = await open(), other = await open();
      same(await ledger.setting("failure_grade"), null);
      await ledger.keepSetting("failure_grade", "2");
      same(await other.setting("failure_grade"), "2");
      await other.keepSetting("failure_grade", "");
      same(await ledger.setting("failure_grade"), "");
      await ledger.keepSetting("failure_grade", null);
      same(await other.setting("failure_grade"), null);
    },
  },
  {
    claim: "clearing leaves no import, no row to fix and no setting",
    async check(open) {
      const ledger = await open();
      await ledger.append(newBatch(1));
      await ledger.keepSetting("a", "b");
      await ledger.clear();
      same([await ledger.batches(), await ledger.rejects(), await ledger.setting("a")], [[], [], null]);
    },
  },
  {
    claim: "an import put in the place of everything leaves nothing else, brings its settings, and is numbered on",
    async check(open) {
      const ledger = await open(), first = await ledger.append(newBatch(1));
      await ledger.keepSetting("old", "1");
      const only = await ledger.replaceAll(newBatch(2), { kept: "yes" });
      same([await numbers(ledger), only.import_no], [[2], 2]);
      same(await content(ledger, only), Array.from(bytes(200, 2)));
      same(await ledger.rejects(), [reject(2)]);
      same([await ledger.setting("old"), await ledger.setting("kept")], [null, "yes"]);
      await refused(ledger.payload(first, "tickets"), "LedgerDamaged");
    },
  },
  {
    claim: "an import put in the place of another takes it out in the same step, rows to fix too, and a refused one leaves it",
    async check(open) {
      const ledger = await open(), first = await ledger.append(newBatch(1)), second = await ledger.append(newBatch(2)), batch = newBatch(3), [tickets] = batch.payloads;
      same((await ledger.rejects(first.id)).map(({ line }) => line), [2], "rejects without the first");
      if (!tickets) throw new Error("no payload");
      await refused(ledger.append({ ...batch, payloads: [tickets, tickets] }, first.id), "RangeError");
      same([await numbers(ledger), (await content(ledger, first)).length], [[1, 2], 200], "after a refusal");
      await ledger.append(batch, first.id);
      same([await numbers(await open()), (await ledger.rejects()).map(({ line }) => line)], [[2, 3], [2, 3]], "after the change");
      await refused(ledger.payload(first, "tickets"), "LedgerDamaged");
      same((await content(ledger, second)).length, 200);
    },
  },
  {
    claim: "of changes made to one setting at once in three tabs none is lost, one that throws changes nothing, and one that changes nothing is not told",
    async check(open) {
      const tabs = [await open(), await open(), await open()], told: string[] = [];
      await Promise.all(Array.from({ length: 30 }, (_, at) => tabs[at % 3]?.changeSetting("list", (kept) => JSON.stringify([...(JSON.parse(kept ?? "[]") as number[]), at]))));
      const list = JSON.parse((await tabs[0]?.setting("list")) ?? "[]") as number[];
      same(list.sort((a, b) => a - b), Array.from({ length: 30 }, (_, at) => at), "all thirty");
      const stop = tabs[1]?.onChange(() => told.push("told"));
      await refused(tabs[0]?.changeSetting("list", () => { throw new TypeError("no"); }) ?? Promise.resolve(), "TypeError");
      same([await tabs[0]?.changeSetting("list", (kept) => kept), await tabs[2]?.changeSetting("none", () => null)].map((kept) => kept === null), [false, true], "kept");
      await new Promise((resolve) => setTimeout(resolve, 50));
      same(told, [], "told");
      stop?.();
      same(await tabs[0]?.changeSetting("list", () => null), null);
      same(await tabs[1]?.setting("list"), null);
    },
  },
  {
    claim: "of tabs that take one import back at once only one does, with the settings that go with it; of tabs that replace it only one does, the others hear that it is gone",
    async check(open) {
      const tabs = [await open(), await open(), await open()] as const, first = await tabs[0].append(newBatch(1)), second = await tabs[0].append(newBatch(2));
      await tabs[0].keepSetting("over", "the demo");
      const took = await Promise.all(tabs.map((tab) => tab.remove(first.id, { over: null, demo: "no" })));
      same([took.filter((one) => one).length, await tabs[1].setting("over"), await tabs[1].setting("demo")], [1, null, "no"], "taken back");
      await tabs[1].keepSetting("over", "the shop");
      same([await tabs[2].remove(first.id, { over: null }), await tabs[2].setting("over")], [false, "the shop"], "taken back late");
      const replaced = await Promise.allSettled([3, 4, 5].map((seed, at) => tabs[at as 0 | 1 | 2].append(newBatch(seed), second.id)));
      const refusals = replaced.flatMap((one) => (one.status === "rejected" ? [(one.reason as Error).name] : []));
      same([refusals, (await numbers(tabs[0])).length, await tabs[0].remove(second.id)], [["ImportGone", "ImportGone"], 1, false], "replaced");
      await tabs[0].clear({ demo: "no" });
      same([await tabs[1].settings(), await numbers(tabs[1])], [{ demo: "no" }, []], "cleared");
    },
  },
  {
    claim: "every change is told to the other tabs, not to its own, and not after stopping",
    async check(open) {
      const ledger = await open(), other = await open(), told: string[] = [];
      ledger.onChange(() => told.push("own"));
      const stop = other.onChange(() => told.push("other"));
      const settled = () => new Promise((resolve) => setTimeout(resolve, 50));
      const batch = await ledger.append(newBatch(1));
      await ledger.keepSetting("a", "b");
      await ledger.remove(batch.id);
      await ledger.clear();
      await settled();
      same(told, ["other", "other", "other", "other"]);
      stop();
      await ledger.clear();
      await settled();
      same(told.length, 4);
    },
  },
  {
    claim: "imports appended at once from two tabs are all kept",
    async check(open) {
      const ledger = await open(), other = await open();
      await Promise.all([1, 2, 3, 4, 5, 6].map((seed) => (seed % 2 ? ledger : other).append(newBatch(seed))));
      same(await numbers(ledger), [1, 2, 3, 4, 5, 6]);
      for (const batch of await other.batches()) same((await content(other, batch)).length, 200);
    },
  },
  {
    claim: "work done alone in two tabs is done one after the other, also when the first fails, and nothing is taken out meanwhile",
    async check(open) {
      const ledger = await open(), other = await open(), done: string[] = [], batch = await ledger.append(newBatch(1));
      const slow = async (name: string) => {
        done.push(`${name} begins`);
        await new Promise((resolve) => setTimeout(resolve, 20));
        done.push(`${name} ends`);
      };
      const failed = ledger.alone(async () => { await slow("one"); throw new TypeError("no"); });
      const [, , left] = await Promise.all([
        refused(failed, "TypeError"), other.remove(batch.id).then(() => done.push("taken out")), other.alone(async () => { await slow("two"); return (await other.batches()).length; }),
      ]);
      same([done.slice(0, 2), done.filter((step) => step.startsWith("two"))], [["one begins", "one ends"], ["two begins", "two ends"]]);
      same([done.indexOf("taken out") > 1, left <= 1, await numbers(ledger)], [true, true, []]);
    },
  },
  {
    claim: "a table that comes twice in one import, or that an import does not have, is a caller's mistake and changes nothing",
    async check(open) {
      const ledger = await open(), batch = newBatch(1), [tickets] = batch.payloads;
      if (!tickets) throw new Error("no payload");
      await refused(ledger.append({ ...batch, payloads: [tickets, tickets] }), "RangeError");
      same(await ledger.batches(), []);
      await refused(ledger.payload(await ledger.append(batch), "orders"), "RangeError");
    },
  },
];
