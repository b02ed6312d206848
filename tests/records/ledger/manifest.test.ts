import { describe, expect, test } from "vitest";
import { LedgerNewer } from "../../../src/records/ledger/errors.ts";
import { LEDGER_VERSION } from "../../../src/records/ledger/ledger.ts";
import { manifest, readManifests } from "../../../src/records/ledger/manifest.ts";
import { packed } from "../../../src/records/ledger/packing.ts";
import { newBatch } from "./contract.ts";

const stored = async () => ({ ...manifest(newBatch(1), await packed(newBatch(1).payloads)), import_no: 4 });

describe("what is kept of an import", () => {
  test("is its manifest with checksum and size of every table as stored", async () => {
    const batch = await stored();
    expect(readManifests([batch], [4])).toEqual([batch]);
    expect(batch.tables[0]).toMatchObject({ table: "tickets", rows: 1, sha256: expect.stringMatching(/^[0-9a-f]{64}$/) });
  });

  test("by a newer version is refused as newer, however strange it looks", () => {
    expect(() => readManifests([{ ledger_version: LEDGER_VERSION + 1, tables: "elsewhere" }], [4])).toThrow(LedgerNewer);
  });

  test.each([
    ["no object", () => null],
    ["text", () => "batch"],
    ["without tables", (batch: object) => ({ ...batch, tables: undefined })],
    ["with half a number", (batch: object) => ({ ...batch, import_no: 1.5 })],
    ["stored under another number", (batch: object) => ({ ...batch, import_no: 5 })],
    ["with a table without a checksum", (batch: object) => ({ ...batch, tables: [{ table: "tickets", rows: 1, bytes: 2 }] })],
  ])("is broken when it is %s, and the others are read", async (_how, change) => {
    const batch = await stored();
    expect(readManifests([batch, change(batch)], [4, 6])).toEqual([batch, expect.objectContaining({ id: "broken-6", import_no: 6, broken: true, tables: [] })]);
  });
});

test("packed rows shrink, and are told by a checksum of what is stored (SHA-256 of Node's own)", async () => {
  const { createHash } = await import("node:crypto");
  const [one] = await packed([{ table: "tickets", rows: 1, stream: new Uint8Array(10_000) }]);
  expect(one?.bytes).toBeLessThan(100);
  expect(one?.sha256).toBe(createHash("sha256").update(one?.content ?? "").digest("hex"));
});
