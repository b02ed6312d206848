import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { conflicts, settlement } from "../../../src/records/merging/conflicts.ts";
import { decideNames, decideTicket, forgetName, forgetTicket, MERGED_BY_ITSELF, nameDecisions, NAMES_DECIDED } from "../../../src/records/merging/decisions.ts";
import type { Verdict } from "../../../src/records/merging/decisions.ts";
import { names } from "../../../src/records/merging/names.ts";
import { putTogether } from "../../../src/records/merging/put-together.ts";
import { rowsBehind } from "../../../src/records/merging/rows-behind.ts";
import { emptied, openBench } from "../bench.ts";
import type { Bench } from "../bench.ts";

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
beforeEach(() => emptied(bench));

const DAY = "2026-06-01";
const together = () => putTogether(bench.engine, bench.ledger);
const models = async () => (await bench.engine.rows<{ text: string }>("select distinct concat_ws(' ', maker, model) as text from visits order by text")).map(({ text }) => text);
const visits = () => bench.engine.rows("select ticket_no, labour_min, technician from visits order by ticket_no");

const NAMES = `ticket_no,received_on,maker,model
${[1, 2, 3, 4, 5, 6].map((n) => `R-${n},2026-03-0${n},Brackhelm,Whinbeck 40`).join("\n")}
R-7,2026-03-07,,whinbeck40
R-8,2026-03-08,Brackhelm,Winbeck 40
R-9,2026-03-09,Brackhelm,Whinbeck 50
`;

describe("names that are one reel", () => {
  beforeEach(async () => void await bench.bringIn({ "t.csv": NAMES }));
  test("count as one by themselves where only the writing differs; raw rows stay as written", async () => {
    expect(await models()).toEqual(["Brackhelm Whinbeck 40", "Brackhelm Whinbeck 50", "Brackhelm Winbeck 40"]);
    expect((await bench.records())["tickets"]?.some(({ model }) => model === "whinbeck40")).toBe(true);
  });
  test("count as one when the owner says so, in the catalogue too, and as before when that is undone", async () => {
    await bench.bringIn({ "fits.csv": "maker,model,position,part_no\nBrackhelm,Winbeck 40,rotor,P-1\n", "models.csv": "maker,model,tier\nBrackhelm,Winbeck 40,mid\n" });
    const before = await models();
    await decideNames(bench.ledger, [{ from: { maker: "Brackhelm", model: "Winbeck 40" }, to: { maker: "Brackhelm", model: "Whinbeck 40" }, decided_on: DAY }]);
    await together();
    expect(await models()).toEqual(["Brackhelm Whinbeck 40", "Brackhelm Whinbeck 50"]);
    expect(await bench.engine.rows("select model, tier from models union all select model, part_no from fits")).toEqual([{ model: "Whinbeck 40", tier: "mid" }, { model: "Whinbeck 40", tier: "P-1" }]);
    await forgetName(bench.ledger, { maker: "Brackhelm", model: "Winbeck 40" });
    await together();
    expect([await models(), await nameDecisions(bench.ledger)]).toEqual([before, []]);
  });
  test("stay apart when the owner says so, whatever they look like", async () => {
    await decideNames(bench.ledger, [{ from: { maker: null, model: "whinbeck40" }, to: null, decided_on: DAY }]);
    await together();
    expect(await models()).toContain("whinbeck40");
    expect((await names(bench.engine, bench.ledger)).apart).toMatchObject([{ model: "whinbeck40", n: 1 }]);
  });
  test("also count where they are only likely, if the shop wishes", async () => {
    await bench.ledger.keepSetting(MERGED_BY_ITSELF, "likely");
    await together();
    expect(await models()).toEqual(["Brackhelm Whinbeck 40", "Brackhelm Whinbeck 50"]);
  });
  test("are not lost to a setting that cannot be read: it counts as none", async () => {
    await bench.ledger.keepSetting(NAMES_DECIDED, "[{");
    await together();
    expect(await nameDecisions(bench.ledger)).toEqual([]);
  });
});

describe("reels", () => {
  const serials = (...all: string[]) => `ticket_no,received_on,model,serial\n${all.map((serial, at) => `R-${at},2026-03-0${at + 1},Withy 5,${serial}`).join("\n")}\n`;
  const before = async () => (await bench.engine.rows<{ previous_ticket: string | null }>("select previous_ticket from visits order by ticket_no")).map((row) => row.previous_ticket);
  test("are linked by a serial in any writing, letter O for zero too", async () => {
    await bench.bringIn({ "t.csv": serials("OM8-0912", "om8 0912", "OM8O912") });
    expect(await before()).toEqual([null, "R-0", "R-1"]);
  });
  test("are never linked by a person's name", async () => {
    await bench.bringIn({ "t.csv": serials("Mr Tarn", "Mr Tarn", "J. Tarn", "J. Tarn") });
    expect(await before()).toEqual([null, null, null, null]);
  });
});

describe("a conflict", () => {
  const row = (minutes: string, technician: string) => `ticket_no,received_on,outcome,model,labour_min,technician\nR-1,2026-03-01,returned,Withy 5,${minutes},${technician}\n`;
  const settle = async (verdict: Verdict, counts: (version: { said: Readonly<Record<string, unknown>> }) => boolean) => {
    const [found] = await conflicts(bench.engine);
    if (!found) throw new Error("no conflict");
    await decideTicket(bench.ledger, settlement(found, verdict, found.versions.find(counts)?.row_key ?? "", DAY));
    await together();
  };
  beforeEach(async () => {
    await bench.bringIn({ "a.csv": row("55", "T1") });
    await bench.bringIn({ "b.csv": row("60", "") });
  });
  test("shows both rows with where they came from, the one that counts first, and where they differ", async () => {
    const [found] = await conflicts(bench.engine);
    expect(found?.versions.map(({ counts, source_file, source_line, said }) => [counts, source_file, source_line, said["labour_min"]])).toEqual([[true, "b.csv", 2, 60], [false, "a.csv", 2, 55]]);
    expect(found?.differs).toEqual(["technician", "labour_min"]);
  });
  test("is settled by choosing a row, and open again when that is undone", async () => {
    await settle("counts", ({ said }) => said["labour_min"] === 55);
    expect([await visits(), await conflicts(bench.engine)]).toEqual([[{ ticket_no: "R-1", labour_min: 55, technician: "T1" }], []]);
    await forgetTicket(bench.ledger, "R-1");
    await together();
    expect([await visits(), (await conflicts(bench.engine)).length]).toEqual([[{ ticket_no: "R-1", labour_min: 60, technician: null }], 1]);
  });
  test("is settled by one row with its blanks filled from the other", async () => {
    await settle("fills", ({ said }) => said["labour_min"] === 60);
    expect([await visits(), await conflicts(bench.engine)]).toEqual([[{ ticket_no: "R-1", labour_min: 60, technician: "T1" }], []]);
  });
  test("is settled as two jobs, of which the other gets a number of its own", async () => {
    await settle("two jobs", ({ said }) => said["labour_min"] === 55);
    expect([await visits(), await conflicts(bench.engine)]).toEqual([[
      { ticket_no: "R-1", labour_min: 55, technician: "T1" }, { ticket_no: "R-1 (2)", labour_min: 60, technician: null }], []]);
  });
  test("is asked anew when a third row comes that contradicts what was settled", async () => {
    await settle("counts", ({ said }) => said["labour_min"] === 55);
    await bench.bringIn({ "c.csv": row("70", "T2") });
    expect((await conflicts(bench.engine)).map(({ versions }) => versions.map(({ said }) => said["labour_min"]))).toEqual([[55, 70]]);
  });
  test("refuses to be settled for a row that is not in it", async () => {
    const [found] = await conflicts(bench.engine);
    expect(() => found && settlement(found, "counts", "none", DAY)).toThrow(RangeError);
  });
  test("tells of a ticket every row of every file that made it, and which count", async () => {
    await bench.bringIn({ "f.csv": "ticket_no,position\nr1,rotor\n" });
    const [one, two, three] = (await bench.ledger.batches()).map(({ import_no }) => import_no);
    expect(await rowsBehind(bench.engine, "R-1")).toEqual([
      { kind: "ticket", position: null, import_no: one, source_file: "a.csv", source_line: 2, counts: false },
      { kind: "ticket", position: null, import_no: two, source_file: "b.csv", source_line: 2, counts: true },
      { kind: "finding", position: "rotor", import_no: three, source_file: "f.csv", source_line: 2, counts: true },
    ]);
  });
});
