import { createHash } from "node:crypto";
import { tableFromIPC } from "apache-arrow";
import { describe, expect, test } from "vitest";
import { besideElsewhere } from "../../src/answers/elsewhere/beside-elsewhere.ts";
import { elsewhereOf, elsewhereText, readElsewhere } from "../../src/answers/elsewhere/elsewhere.ts";
import type { ElsewhereRow } from "../../src/answers/elsewhere/elsewhere.ts";
import { BadRollUp, rollUpFileOf, rollUpOf, rollUpRows } from "../../src/answers/elsewhere/roll-up.ts";
import type { RollUpRow } from "../../src/answers/elsewhere/roll-up.ts";
import type { Verdict } from "../../src/answers/failures/verdict.ts";
import { rowsStream } from "../../src/db/rows-stream.ts";

/** Planned in salt, complaint in salt, and a way of coming in that was not written. */
const PLANNED = 259, COMPLAINT = 515, UNKNOWN = 3;
const row = (shop: number, condition: number, failed: number, inspected: number, model = "Whinbeck 40"): RollUpRow =>
  ({ shop, position: "ar_clutch", maker: "Brackhelm", model, condition, inspected, failed });
const ROWS = [row(1, PLANNED, 2, 40), row(1, COMPLAINT, 3, 10), row(2, PLANNED, 1, 60), row(2, UNKNOWN, 1, 5), row(2, PLANNED, 0, 9, "Dovekin 25")];

describe("a roll-up", () => {
  test("sums the seasons of each shop and condition, and nothing else", () => {
    // Cells: 1024 × (256 × shop + season - 1900) + condition.
    const cell = (shop: number, season: number) => 1024 * (256 * shop + season - 1900) + PLANNED;
    expect(rollUpOf([{ position: "ar_clutch", maker: null, model: "Withy 5", reel_kind: "fly", cells: [cell(1, 2023), cell(1, 2024), cell(2, 2024)], inspected: [10, 5, 7], failed: [1, 2, 0] }])).toEqual([
      { shop: 1, position: "ar_clutch", maker: null, model: "Withy 5", condition: PLANNED, inspected: 15, failed: 3 },
      { shop: 2, position: "ar_clutch", maker: null, model: "Withy 5", condition: PLANNED, inspected: 7, failed: 0 }]);
  });

  test("comes back as it was written", async () => {
    expect(await rollUpRows(await rollUpFileOf(ROWS))).toEqual(ROWS);
    expect(await rollUpRows(await rollUpFileOf([]))).toEqual([]);
  });

  test("is an Arrow stream to any reader", async () => {
    expect(tableFromIPC(await rollUpFileOf(ROWS)).numRows).toBe(ROWS.length);
  });

  test("with any bit of any byte turned is refused in a sentence", async () => {
    const file = await rollUpFileOf(ROWS);
    for (let at = 0; at < file.length; at += 1) {
      const damaged = file.slice();
      damaged[at] = (damaged[at] ?? 0) ^ (1 << (at % 8));
      expect([at, await rollUpRows(damaged).catch((error: unknown) => error)]).toEqual([at, expect.any(BadRollUp)]);
    }
  });

  test("cut short, of another version, of another kind, or with counts that cannot be, is refused in a sentence", async () => {
    const file = await rollUpFileOf(ROWS), signed = (stream: Uint8Array, version = 1) =>
      Buffer.concat([stream, Buffer.from(`\nSALTBENCH ROLL-UP ${version} ${createHash("sha256").update(stream).digest("hex")}\n`)]);
    await expect(rollUpRows(file.slice(0, file.length - 9))).rejects.toThrow(/^This is no roll-up of other shops, or it is damaged at its end/);
    await expect(rollUpRows(file.slice(50))).rejects.toThrow(/its checksum does not fit/);
    await expect(rollUpRows(signed(file, 2))).rejects.toThrow("This roll-up is of version 2, this Saltbench reads version 1.");
    await expect(rollUpRows(signed(Buffer.from("no arrow")))).rejects.toThrow(BadRollUp);
    await expect(rollUpRows(signed(rowsStream({ shop: "integer" }, Array.from({ length: 100 }, () => ({ shop: 1 })))))).rejects.toThrow(BadRollUp);
    await expect(rollUpRows(new TextEncoder().encode("ticket_no,received_on\n1,2024-03-01\n"))).rejects.toThrow(BadRollUp);
    await expect(rollUpFileOf([row(1, PLANNED, 9, 4)]).then(rollUpRows)).rejects.toThrow(/cannot be true/);
  });
});

describe("what is taken from it", () => {
  const all = elsewhereOf(ROWS, "2026-11-30");

  test("are counts over all shops by way of coming in, with how many shops there were", () => {
    const of = (opening: string) => all.rows.find((one) => one.model === "Whinbeck 40" && one.opening === opening);
    expect(all.shops).toBe(2);
    expect(of("*")).toMatchObject({ failed: 7, inspected: 115, shops: 2 });
    expect(of("planned")).toMatchObject({ failed: 3, inspected: 100, shops: 2 });
    expect(of("complaint")).toMatchObject({ failed: 3, inspected: 10, shops: 1 });
  });

  test("is kept and read again; what cannot be read is left out whole and told", () => {
    expect(readElsewhere(elsewhereText(all))).toEqual({ elsewhere: all, faults: [] });
    expect(readElsewhere(null)).toEqual({ elsewhere: null, faults: [] });
    for (const bad of ["", "{", "[]", "null", "7", elsewhereText(all).replace("2026-11-30", "soon"), elsewhereText(all).replace(",115,", ",-1,"), elsewhereText({ ...all, rows: [{ position: "a" } as ElsewhereRow] })]) {
      expect(readElsewhere(bad)).toEqual({ elsewhere: null, faults: [expect.stringMatching(/cannot be read and is left out/)] });
    }
  });
});

describe("a model beside other shops", () => {
  const verdict = (position: string, failed: number, inspected: number) =>
    ({ position, position_name: position, maker: "Brackhelm", model: "Whinbeck 40", sides: [{ opening: "planned", failed, inspected }] }) as unknown as Verdict;
  const there = (position: string, failed: number, inspected: number): ElsewhereRow => ({ position, maker: "brackhelm ", model: "Whinbeck 40", opening: "planned", failed, inspected, shops: 3 });

  test("is told apart only where chance would not do it, and where both sides have ten", () => {
    const verdicts = [verdict("a", 30, 100), verdict("b", 3, 100), verdict("c", 2, 9), verdict("d", 1, 50)];
    const rows = besideElsewhere(verdicts, { taken_on: "2026-11-30", shops: 3, rows: [there("a", 50, 1000), there("b", 30, 1000), there("c", 1, 1000), { ...there("d", 1, 9), opening: "complaint" }] }, "planned");
    expect(rows.map(({ position, word }) => [position, word])).toEqual([["a", "more often here"], ["b", "no clear difference"], ["c", "too few"]]);
    expect(rows[0]).toMatchObject({ failed: 30, inspected: 100, elsewhere_failed: 50, elsewhere_inspected: 1000, shops: 3, rate: { value: 0.3 }, elsewhere_rate: { value: 0.05 } });
  });
});
