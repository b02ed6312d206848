import { afterAll, expect, test } from "vitest";
import { MANIFEST } from "../../src/records/backup/manifest.ts";
import { zipped } from "../../src/records/backup/zip.ts";
import { backUp, backupFiles } from "../../src/records/backup.ts";
import { packed, unpacked } from "../../src/records/ledger/packing.ts";
import { openBench } from "../records/bench.ts";
import { bytes as noise } from "../records/ledger/contract.ts";
import { everyDamage } from "./damage.ts";

const told: Record<string, unknown> = {};
afterAll(() => { process.stdout.write(`damaged kept: ${JSON.stringify(told)}\n`); });

test("every byte changed and every cut of a kept import is found", async () => {
  const [stored] = await packed([{ table: "tickets", rows: 3, stream: noise(300, 5) }]), batch = { import_no: 4 } as Parameters<typeof unpacked>[0];
  if (!stored) throw new Error("nothing was packed");
  const ends = { found: 0, missed: [] as string[] };
  for (const { what, bytes } of everyDamage(stored.content)) {
    const error: unknown = await unpacked(batch, stored, bytes).then(() => null, (failed: unknown) => failed);
    if (error instanceof Error && error.message === "Import 4 can no longer be read: its tickets have changed on the disk. Import its files again or restore a backup.") ends.found += 1;
    else ends.missed.push(`${what}: ${String(error)}`);
  }
  told["import"] = { found: ends.found };
  expect(ends.missed).toEqual([]);
}, 3_600_000);

test("every byte changed and every cut of a backup is refused with a sentence, or it holds the very same records", async () => {
  const bench = await openBench();
  await bench.bringIn({ "tickets.csv": "ticket_no,received_on,model,note\nR-1,2026-03-01,Withy 5,fine\nR-2,soon,Withy 5,\n" });
  await bench.ledger.keepSetting("currency", "cu");
  const good = new Uint8Array(await (await backUp({ ...bench, today: "2026-06-01" })).arrayBuffer());
  const wanted = await backupFiles(new Blob([good])), ends = { found: 0, same: 0, other: [] as string[], thrown: [] as string[] };
  for (const { what, bytes } of everyDamage(good)) {
    try {
      const files = await backupFiles(new Blob([bytes]));
      const differs = [...wanted].find(([name, content]) => name !== MANIFEST && Buffer.compare(content, files.get(name) ?? new Uint8Array()) !== 0);
      if (differs || files.size !== wanted.size) ends.other.push(`${what}: ${differs?.[0] ?? "other files"}`);
      else ends.same += 1;
    } catch (error) {
      if (error instanceof Error && error.name === "BackupRefused" && /^[A-Z].*\.$/.test(error.message)) ends.found += 1;
      else ends.thrown.push(`${what}: ${String(error)}`);
    }
  }
  told["backup"] = { bytes: good.length, found: ends.found, same: ends.same };
  expect([ends.thrown, ends.other]).toEqual([[], []]);
}, 3_600_000);

test("a backup that says it holds more than can be packed into it, or holds other files beside its own, makes no room for them", async () => {
  const bench = await openBench(), good = await backUp({ ...bench, today: "2026-06-01" });
  const files = new Map(await backupFiles(good)), more = new Map([...files, ["../../outside.csv", new Uint8Array([1])], ["/etc/passwd", new Uint8Array([1])], ["tickets.csv.exe", new Uint8Array([1])]]);
  expect([...(await backupFiles(new Blob([zipped(more, "2026-06-01")]))).keys()].sort()).toEqual([...files.keys()].sort());
  const bytes = new Uint8Array(await good.arrayBuffer()), view = new DataView(bytes.buffer), directory = view.getUint32(bytes.length - 6, true);
  view.setUint32(directory + 24, 0x7fff_0000, true);
  await expect(backupFiles(new Blob([bytes]))).rejects.toThrow("This backup is damaged: tickets.csv says that it holds more than can be packed into it.");
});
