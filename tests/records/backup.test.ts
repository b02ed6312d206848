import { unzipSync, zipSync } from "fflate";
import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { backUp, restore } from "../../src/records/backup.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { conflicts } from "../../src/records/merging/conflicts.ts";
import { decideNames, nameDecisions } from "../../src/records/merging/decisions.ts";
import { putTogether } from "../../src/records/merging/put-together.ts";
import { putRightKeys } from "../../src/records/put-right.ts";
import { rowsToFixCsv } from "../../src/records/rows-to-fix.ts";
import { emptied, openBench } from "./bench.ts";
import type { Bench } from "./bench.ts";

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
beforeEach(() => emptied(bench));

const FILES = {
  "tickets.csv": 'ticket_no,received_on,finished_on,maker,model,serial,salt_days,rinse,came_in,job,complaint,labour_min,warranty,labour_charge,note\nR-1,2026-03-01,2026-03-09,Brackhelm,Whinbeck 40,W-1,12.5,never,,full service,grinding,55,yes,38.50,"=HYPERLINK(""x"")\nsecond line, and ""more"""\nR-2,2026-03-02,,Ostvarg,Ekholt 30,,,,planned,,\'=a,,no,,- dash\nR-3,soon,,A,B,,,,,,,,,,"@x;y"\n',
  "findings.csv": "ticket_no,position,part_no,mode,grade,action,routine,qty,unit_cost\nR-1,ar_clutch,P-1,corroded,3,replaced,no,1,29.00\nR-1,ar_clutch,P-1,corroded,3,replaced,no,1,29.00\nR-2,rotor,,,0,cleaned,,,\n",
  "parts.csv": "part_no,name,family,on_hand,size,essential\nP-1,+clutch,one-way clutch,3,,yes\n",
  "models.csv": "maker,model,reel_kind,sealed\nBrackhelm,Whinbeck 40,spinning,y\n",
  "orders.csv": "supplier,part_no,qty,ordered_on,arrived_on\nRingmoss,P-1,10,2026-01-02,\n",
};
const asTomorrow = { today: "2026-06-01" };
const bytes = async (blob: Blob) => new Uint8Array(await blob.arrayBuffer());
const make = () => backUp({ ...bench, today: "2026-06-01" });
const bringBack = (file: Blob) => restore(file, { ...bench, ...asTomorrow });

/** The backup with one entry changed. */
async function tampered(name: string, change: (text: string) => string | null): Promise<Blob> {
  const files = unzipSync(await bytes(await make())), text = change(new TextDecoder().decode(files[name]));
  if (text === null) Reflect.deleteProperty(files, name);
  else files[name] = new TextEncoder().encode(text);
  return new Blob([zipSync(files) as Uint8Array<ArrayBuffer>]);
}

describe("a backup", () => {
  test("holds the seven tables, the rows to fix, the settings and a manifest, as ordinary files", async () => {
    await bench.bringIn(FILES);
    const files = unzipSync(await bytes(await make()));
    expect(Object.keys(files)).toEqual([
      "tickets.csv", "findings.csv", "models.csv", "parts.csv", "fits.csv", "suppliers.csv", "orders.csv", "sources.csv", "rows-to-fix.csv", "settings.json", "manifest.json",
    ]);
    expect(new TextDecoder().decode(files["rows-to-fix.csv"])).toMatch(/^file,line,column,value,reason,ticket_no,.*\r\ntickets\.csv,5,received_on,soon,"“soon” is not a date; write it as 2026-03-14",R-3,soon,.*\r\n$/);
    expect(new TextDecoder().decode(files["parts.csv"]).split("\r\n")[1]).toBe("P-1,'+clutch,one-way clutch,,,,,,,3,,,,,,yes");
  });
  test("comes back into an empty shop with the same rows, and its next backup is the same byte for byte", async () => {
    await bench.bringIn(FILES);
    await bench.ledger.keepSetting("currency", "cu");
    const before = await bench.records(), first = await make(), rejects = await bench.ledger.rejects();
    await emptied(bench);
    const back = await bringBack(first);
    expect(back.files.map(({ rows_to_fix, rows_dropped, unreadable }) => [rows_to_fix, rows_dropped, unreadable])).toEqual(Array(7).fill([0, 0, null]));
    expect(await bench.records()).toEqual(before);
    expect(await bench.ledger.rejects()).toEqual(rejects);
    expect(await bench.ledger.settings()).toEqual({ currency: "cu" });
    expect(await bytes(await make())).toEqual(await bytes(first));
  });
  test("brings back both rows of a number, what was settled of them, where each came from, merged names and rows put right", async () => {
    const sheet = (minutes: number, ...parts: string[]) => `ticket_no,received_on,outcome,model,labour_min,part,note\n${parts.map((part) => `R-1,2026-03-01,returned,Withy 5,${minutes},${part},"two\nlines"`).join("\n")}\n`;
    await bench.bringIn({ "z.csv": sheet(60, "rotor", "body") });
    await bench.bringIn({ "a.csv": sheet(55, "rotor", "bail_spring"), "t.csv": "ticket_no,received_on,model\nR-2,soon,WITHY5\n" });
    await bench.bringIn({ "list.csv": rowsToFixCsv(await bench.ledger.rejects()).replace("R-2,soon", "R-2,2026-03-02") });
    await decideNames(bench.ledger, [{ from: { maker: null, model: "WITHY5" }, to: null, decided_on: "2026-06-01" }]);
    await putTogether(bench.engine, bench.ledger);
    const state = async () => ({
      visits: await bench.engine.rows("select ticket_no, labour_min, model, source_file, source_line from visits order by ticket_no"),
      findings: await bench.engine.rows("select ticket_no, position, source_file, source_line from findings order by position"),
      open: (await conflicts(bench.engine)).map(({ versions }) => versions.map(({ source_file, source_line, counts }) => [source_file, source_line, counts])),
      put_right: [...await putRightKeys(bench.ledger)], names: await nameDecisions(bench.ledger),
    });
    const before = await state(), file = await make();
    expect([before.open, before.put_right.length]).toEqual([[[["a.csv", 2, true], ["z.csv", 2, false]]], 1]);
    await emptied(bench);
    await bringBack(file);
    expect(await state()).toEqual(before);
    expect(await bytes(await make())).toEqual(await bytes(file));
  });
  test("takes the place of what was there, in one step", async () => {
    await bench.bringIn(FILES);
    const file = await make(), before = await bench.records();
    await bench.bringIn({ "later.csv": "ticket_no,received_on,model\nX-1,2026-05-01,Z\nX-2,never,Z\n" });
    await bench.ledger.keepSetting("currency", "kr");
    await bringBack(file);
    expect(await bench.records()).toEqual(before);
    expect((await bench.ledger.batches()).map(({ origin }) => origin)).toEqual(["backup"]);
    expect((await bench.ledger.rejects()).map(({ file: name }) => name)).toEqual(["tickets.csv"]);
    expect(await bench.ledger.settings()).toEqual({});
  });
  test("keeps a guess a guess", async () => {
    await bench.bringIn(FILES);
    const file = await make();
    await bringBack(file);
    expect(await bench.engine.rows("select came_in, came_in_guessed from ledger.tickets order by ticket_no")).toEqual([
      { came_in: "complaint", came_in_guessed: true }, { came_in: "planned", came_in_guessed: false },
    ]);
  });
  test("lets the shop's own files be brought in again without adding anything", async () => {
    await bench.bringIn(FILES);
    await bringBack(await make());
    expect((await bench.bringIn(FILES)).files.map(({ rows_new }) => rows_new)).toEqual([0, 0, 0, 0, 0]);
  });
});

describe("a file that is no sound backup is refused and nothing changes", () => {
  test.each([
    ["a text", new Blob(["ticket_no"]), "This file is not a backup of Saltbench, or it is damaged: it cannot be unpacked."],
    ["another archive", new Blob([zipSync({ "a.txt": new Uint8Array(3) }) as Uint8Array<ArrayBuffer>]), "This zip file is not a backup of Saltbench: it has no manifest.json."],
  ])("%s", (_name, file, sentence) => expect(bringBack(file)).rejects.toThrow(sentence));
  test.each([
    ["findings.csv", (text: string) => text.replace("ar_clutch", "ar_sleeve"), "This backup is damaged: findings.csv is not what was written (its checksum differs)."],
    ["parts.csv", () => null, "This backup is damaged: parts.csv is missing."],
    ["manifest.json", (text: string) => text.replace('"saltbench_backup": 1', '"saltbench_backup": 3'), "This backup was made by a newer version of Saltbench."],
    ["manifest.json", (text: string) => text.replace('"ledger_version": 1', '"ledger_version": 99'), "This backup was made by a newer version of Saltbench."],
    ["manifest.json", (text: string) => text.replace("orders.csv", "ordres.csv"), "This backup is damaged: its manifest.json does not list orders.csv."],
    ["manifest.json", () => "{", "This backup is damaged: its manifest.json cannot be read."],
  ])("%s changed", async (name, change, sentence) => {
    await bench.bringIn(FILES);
    const before = await bench.records();
    await expect(bringBack(await tampered(name, change))).rejects.toThrow(sentence);
    expect(await bench.records()).toEqual(before);
  });
  test("a cut archive", async () => {
    await bench.bringIn(FILES);
    const whole = await bytes(await make());
    await expect(bringBack(new Blob([whole.slice(0, whole.length - 40)]))).rejects.toThrow("it cannot be unpacked");
  });
  test("a ledger that cannot write keeps the records that were there, on the disk and on show", async () => {
    await bench.bringIn(FILES);
    const before = await bench.records(), file = await make();
    const full = { ...bench.ledger, replaceAll: () => Promise.reject(new Error("full")) };
    await expect(restore(file, { ...bench, ...asTomorrow, ledger: full })).rejects.toThrow("full");
    expect(await bench.records()).toEqual(before);
    expect(await bench.ledger.batches()).toHaveLength(1);
  });
});

test("an empty shop has a backup that comes back empty", async () => {
  const file = await make();
  await bringBack(file);
  expect(Object.values(await bench.records()).flat()).toEqual([]);
  expect(await openMemoryLedger().settings()).toEqual({});
});
