import { afterAll, beforeAll, expect, test } from "vitest";
import { openNodeEngine } from "../../src/db/open-node.ts";
import type { Engine } from "../../src/db/engine.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { MemoryShelf, openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { rebuild } from "../../src/records/rebuild.ts";

/** Two tabs at one disk, each with an engine of its own that knows nothing of the other. */
const shelf = new MemoryShelf(), ledgers = [openMemoryLedger(shelf), openMemoryLedger(shelf)] as const;
let engines: [Engine, Engine];
beforeAll(async () => {
  engines = [await openNodeEngine(), await openNodeEngine()];
  for (const engine of engines) {
    await prepareSchema(engine);
    await loadVocabulary(engine);
  }
});
afterAll(() => Promise.all(engines.map((engine) => engine.close())));

const FILES = { "t.csv": "ticket_no,received_on,model\nR-1,2026-03-01,Withy 5\nR-2,2026-03-02,Withy 5\n", "f.csv": "ticket_no,position\nR-1,rotor\nR-1,rotor\n" };
const bringIn = (tab: 0 | 1, files: Record<string, string>) => importFiles(Object.entries(files).map(([name, text]) => ({ name, blob: new Blob([text]) })),
  { engine: engines[tab], ledger: ledgers[tab], today: "2026-06-01", origin: "files" });
const kept = async (tab: 0 | 1) => {
  await rebuild(engines[tab], ledgers[tab]);
  return (await engines[tab].rows("select (select count(*) from ledger.tickets) as tickets, (select count(*) from ledger.findings) as findings"))[0];
};

test("the same files brought in at once in two tabs come in once", async () => {
  const both = await Promise.all([bringIn(0, FILES), bringIn(1, FILES)]);
  expect(both.map((one) => one.files.reduce((sum, { rows_new }) => sum + rows_new, 0)).sort()).toEqual([0, 4]);
  expect([await kept(0), await kept(1)]).toEqual([{ tickets: 2, findings: 2 }, { tickets: 2, findings: 2 }]);
});

test("a tab adds only what is new beside what the other has added since it was opened", async () => {
  await bringIn(0, { "more.csv": "ticket_no,received_on,model\nR-3,2026-03-03,Withy 5\n" });
  const late = await bringIn(1, { "more.csv": "ticket_no,received_on,model\nR-3,2026-03-03,Withy 5\nR-4,2026-03-04,Withy 5\n" });
  expect(late.files[0]).toMatchObject({ rows_new: 1, rows_known: 1 });
});

test("a tab counts a row as new again that the other has taken out", async () => {
  const [first] = await ledgers[0].batches();
  await ledgers[0].remove(first?.id ?? "");
  const again = await bringIn(1, FILES);
  expect(again.files.map(({ rows_new }) => rows_new)).toEqual([2, 2]);
});

test("own files put out a demo that another tab opened meanwhile, and no demo comes in beside own records", async () => {
  for (const batch of await ledgers[0].batches()) await ledgers[0].remove(batch.id);
  const demo = { "demo.csv": "ticket_no,received_on,model\nD-1,2026-03-01,Ombry 8\n" }, as_demo = (tab: 0 | 1) => importFiles(Object.entries(demo).map(([name, text]) => ({ name, blob: new Blob([text]) })),
    { engine: engines[tab], ledger: ledgers[tab], today: "2026-06-01", origin: "demo" });
  await as_demo(0);
  await bringIn(1, FILES);
  expect((await ledgers[0].batches()).map(({ origin }) => origin)).toEqual(["files"]);
  await expect(as_demo(0)).rejects.toThrow("Records came in from another window meanwhile, and invented and real records never stand together: the demo was not opened.");
  expect([await kept(0), await kept(1)]).toEqual([{ tickets: 2, findings: 2 }, { tickets: 2, findings: 2 }]);
});

test("files read again in two tabs in the place of one import take it once; the late tab is told and adds nothing", async () => {
  const [first] = await ledgers[0].batches(), again = (tab: 0 | 1) => importFiles(Object.entries(FILES).map(([name, text]) => ({ name, blob: new Blob([text]) })),
    { engine: engines[tab], ledger: ledgers[tab], today: "2026-06-01", origin: "files", instead_of: first?.id ?? "" });
  const both = await Promise.allSettled([again(0), again(1)]);
  expect(both.map(({ status }) => status).sort()).toEqual(["fulfilled", "rejected"]);
  expect(both.flatMap((one) => (one.status === "rejected" ? [(one.reason as Error).name] : []))).toEqual(["ImportGone"]);
  expect([(await ledgers[0].batches()).length, await kept(0), await kept(1)]).toEqual([1, { tickets: 2, findings: 2 }, { tickets: 2, findings: 2 }]);
});
