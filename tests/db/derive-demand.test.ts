import { expect, test } from "vitest";
import { openEngine } from "./open.ts";
import { putAll } from "./put.ts";

const TICKET = { received_on: "2026-01-10", maker: "Halyard", model: "M" };

test("what was replaced or wanted is demand on the day the reel came in, and a number that is missing is taken as one piece and said so", async () => {
  const engine = await openEngine();
  await putAll(engine, {
    "ledger.tickets": [{ ...TICKET, ticket_no: "T1", outcome: "returned" }, { ...TICKET, ticket_no: "T2", outcome: "waiting" }],
    "ledger.findings": [
      { ticket_no: "T1", position: "roller", part_no: "P1", action: "replaced", qty: 2 },
      { ticket_no: "T1", position: "clutch", part_no: "P2", action: "replaced", routine: true },
      { ticket_no: "T1", position: "seal", part_no: "P3", action: "cleaned", qty: 1 },
      { ticket_no: "T1", position: "bail", part_no: "P4", action: "wanted", qty: 1 },
      { ticket_no: "T2", position: "roller", part_no: "P1", action: "wanted", qty: 1 },
      { ticket_no: "T9", position: "roller", part_no: "P1", action: "replaced", qty: 1 },
    ],
  });
  expect(await engine.rows("select ticket_no, part_no, day, qty, routine, qty_assumed, waiting from demand order by ticket_no, part_no")).toEqual([
    { ticket_no: "T1", part_no: "P1", day: "2026-01-10", qty: 2, routine: false, qty_assumed: false, waiting: false },
    { ticket_no: "T1", part_no: "P2", day: "2026-01-10", qty: 1, routine: true, qty_assumed: true, waiting: false },
    { ticket_no: "T1", part_no: "P4", day: "2026-01-10", qty: 1, routine: false, qty_assumed: false, waiting: false },
    { ticket_no: "T2", part_no: "P1", day: "2026-01-10", qty: 1, routine: false, qty_assumed: false, waiting: true },
  ]);
});

test("a finding without a part number takes the one part that fits there; where two fit or none it stays unknown", async () => {
  const engine = await openEngine();
  const fit = { maker: "Halyard", model: "M" };
  await putAll(engine, {
    "ledger.tickets": [{ ...TICKET, ticket_no: "T1", labour_min: 30 }, { ...TICKET, ticket_no: "T2", maker: null }],
    "ledger.fits": [
      { ...fit, position: "roller", part_no: "P1", qty: 1 },
      { ...fit, position: "clutch", part_no: "P2" }, { ...fit, position: "clutch", part_no: "P3" },
      { ...fit, position: "seal", part_no: "P4", qty: 0 },
    ],
    "ledger.findings": [
      { ticket_no: "T1", position: "roller", action: "replaced" },
      { ticket_no: "T1", position: "clutch", action: "replaced" },
      { ticket_no: "T1", position: "seal", action: "replaced" },
      { ticket_no: "T1", position: "spool", part_no: "P9", action: "replaced" },
      { ticket_no: "T2", position: "roller", action: "wanted" },
    ],
  });
  expect(await engine.rows("select ticket_no, position, part_no, part_from_fits, waiting from demand order by ticket_no, position")).toEqual([
    { ticket_no: "T1", position: "clutch", part_no: null, part_from_fits: true, waiting: false },
    { ticket_no: "T1", position: "roller", part_no: "P1", part_from_fits: true, waiting: false },
    { ticket_no: "T1", position: "seal", part_no: null, part_from_fits: true, waiting: false },
    { ticket_no: "T1", position: "spool", part_no: "P9", part_from_fits: false, waiting: false },
    { ticket_no: "T2", position: "roller", part_no: null, part_from_fits: true, waiting: true },
  ]);
});
