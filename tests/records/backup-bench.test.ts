import { unzipSync, zipSync } from "fflate";
import { beforeAll, beforeEach, expect, test } from "vitest";
import { backUp, restore } from "../../src/records/backup.ts";
import { openMemoryBench } from "../../src/records/bench-log/memory-bench.ts";
import { bytes as pixels } from "./ledger/contract.ts";
import { emptied, openBench, type Bench } from "./bench.ts";

let shop: Bench;
beforeAll(async () => { shop = await openBench(); });
beforeEach(() => emptied(shop));

const picture = (seed: number) => pixels(900, seed) as Uint8Array<ArrayBuffer>;
const zipOf = async (blob: Blob) => unzipSync(new Uint8Array(await blob.arrayBuffer()));

/** A bench with one ticket that waits and one that went into the records, a photo each. */
async function atBench() {
  const bench = openMemoryBench(), waits = await bench.begin({ ticket_no: "R 7/b", model: "Withy 5", rinse: null }), done = await bench.begin({ ticket_no: "R-6", model: "Ombry 8" });
  await bench.addPhoto(waits.id, "Drag & spool", picture(1));
  await bench.addPhoto(done.id, "reel", picture(2));
  await bench.finish(done.id, "batch-1");
  return bench;
}

test("a backup holds what is at the bench with its photos as pictures, and brings all of it back", async () => {
  const bench = await atBench(), before = await bench.copy();
  const backup = await backUp({ ...shop, today: "2026-06-01", bench }), files = await zipOf(backup);
  expect(Object.keys(files).filter((name) => name.startsWith("photos/")).map((name) => name.replace(/-[0-9a-f-]{36}/, ""))).toEqual(["photos/R-7-b-Drag-spool.jpg", "photos/R-6-reel.jpg"]);
  const other = openMemoryBench();
  await other.begin({ ticket_no: "X-1" });
  await restore(backup, { ...shop, today: "2026-06-01", bench: other });
  expect(await other.copy()).toEqual(before);
});

test("a backup made with nothing at the bench is as it always was, and leaves the bench alone", async () => {
  const backup = await backUp({ ...shop, today: "2026-06-01", bench: openMemoryBench() });
  const manifest: unknown = JSON.parse(new TextDecoder().decode((await zipOf(backup))["manifest.json"]));
  expect(manifest).toMatchObject({ saltbench_backup: 1 });
  const bench = await atBench(), before = await bench.copy();
  await restore(backup, { ...shop, today: "2026-06-01", bench });
  expect(await bench.copy()).toEqual(before);
});

test("a backup with a photo that changed is refused by name, and nothing has changed", async () => {
  const bench = await atBench(), before = await bench.copy(), files = await zipOf(await backUp({ ...shop, today: "2026-06-01", bench }));
  const [name = ""] = Object.keys(files).filter((one) => one.startsWith("photos/"));
  files[name]?.set([1, 2, 3]);
  const refused = restore(new Blob([zipSync(files) as Uint8Array<ArrayBuffer>]), { ...shop, today: "2026-06-01", bench });
  await expect(refused).rejects.toMatchObject({ name: "BackupRefused", message: expect.stringContaining(name) as string });
  expect(await bench.copy()).toEqual(before);
});
