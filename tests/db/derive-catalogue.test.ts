import { expect, test } from "vitest";
import { openEngine } from "./open.ts";
import { putAll } from "./put.ts";

test("of rows with one key the newest import counts, then the later line; other keys stay", async () => {
  const engine = await openEngine();
  await putAll(engine, {
    "ledger.parts": [
      { part_no: "A-1", unit_cost: 3, import_no: 2, source_line: 2 },
      { part_no: "A-1", unit_cost: 1, import_no: 1, source_line: 9 },
      { part_no: "A-1", unit_cost: 4, import_no: 2, source_line: 3 },
      { part_no: "B-2", unit_cost: 7, import_no: 1, source_line: 3 },
    ],
  });
  expect(await engine.rows("select part_no, unit_cost from parts order by part_no")).toEqual([
    { part_no: "A-1", unit_cost: 4 }, { part_no: "B-2", unit_cost: 7 },
  ]);
});

test("a model without a maker is one model, and not the one of a maker", async () => {
  const engine = await openEngine();
  await putAll(engine, {
    "ledger.models": [
      { model: "Tern 4000", reel_kind: "spinning", import_no: 1 },
      { model: "Tern 4000", reel_kind: "other", import_no: 2 },
      { maker: "Halyard", model: "Tern 4000", reel_kind: "spinning", import_no: 1 },
    ],
  });
  expect(await engine.rows("select maker, reel_kind from models order by maker nulls first")).toEqual([
    { maker: null, reel_kind: "other" }, { maker: "Halyard", reel_kind: "spinning" },
  ]);
});

test("a fit, a supplier and an order are replaced by their newest row, and an arrival is kept", async () => {
  const engine = await openEngine();
  const order = { order_no: "O1", supplier: "S", part_no: "A-1", ordered_on: "2026-01-05", qty: 10 };
  await putAll(engine, {
    "ledger.fits": [
      { model: "M", position: "ar_clutch", part_no: "A-1", qty: 1, import_no: 1 },
      { model: "M", position: "ar_clutch", part_no: "A-1", qty: 2, import_no: 2 },
      { model: "M", position: "ar_clutch", part_no: "A-2", qty: 1, import_no: 1 },
    ],
    "ledger.suppliers": [{ supplier: "S", order_cost: 5, import_no: 1 }, { supplier: "S", order_cost: 6, import_no: 2 }],
    "ledger.orders": [{ ...order, import_no: 1 }, { ...order, arrived_on: "2026-01-19", import_no: 2 }],
  });
  expect(await engine.rows("select part_no, qty from fits order by part_no")).toEqual([{ part_no: "A-1", qty: 2 }, { part_no: "A-2", qty: 1 }]);
  expect(await engine.rows("select supplier, order_cost from suppliers")).toEqual([{ supplier: "S", order_cost: 6 }]);
  expect(await engine.rows("select order_no, arrived_on from orders")).toEqual([{ order_no: "O1", arrived_on: "2026-01-19" }]);
});
