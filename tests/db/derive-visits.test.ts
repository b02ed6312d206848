import { expect, test } from "vitest";
import { openEngine } from "./open.ts";
import { putAll } from "./put.ts";

const ONE = { maker: "Halyard", model: "Tern 4000", serial: "S1" };

test("visits of one serial follow each other, and months are counted from the visit before unless they were written", async () => {
  const engine = await openEngine();
  await putAll(engine, {
    "ledger.tickets": [
      { ticket_no: "T3", received_on: "2026-01-10", ...ONE, months_since_service: 9 },
      { ticket_no: "T1", received_on: "2024-01-10", ...ONE },
      { ticket_no: "T2", received_on: "2025-01-09", ...ONE },
      { ticket_no: "T4", received_on: "2025-06-01", ...ONE, model: "Tern 5000" },
      { ticket_no: "T5", received_on: "2025-07-01", ...ONE, serial: null },
      { ticket_no: "T6", received_on: "2025-08-01", ...ONE, serial: null },
    ],
  });
  // 2024-01-10 to 2025-01-09 is 365 days, one short of the leap year's 366; 365 / 30.4375 = 11.99179.
  const found = await engine.rows("select ticket_no, visit_no, previous_ticket, previous_on, round(months, 5) as months, months_from from visits order by ticket_no");
  expect(found).toEqual([
    { ticket_no: "T1", visit_no: 1, previous_ticket: null, previous_on: null, months: null, months_from: null },
    { ticket_no: "T2", visit_no: 2, previous_ticket: "T1", previous_on: "2024-01-10", months: 11.99179, months_from: "from the visit before" },
    { ticket_no: "T3", visit_no: 3, previous_ticket: "T2", previous_on: "2025-01-09", months: 9, months_from: "written" },
    { ticket_no: "T4", visit_no: 1, previous_ticket: null, previous_on: null, months: null, months_from: null },
    { ticket_no: "T5", visit_no: null, previous_ticket: null, previous_on: null, months: null, months_from: null },
    { ticket_no: "T6", visit_no: null, previous_ticket: null, previous_on: null, months: null, months_from: null },
  ]);
});

test("a ticket is finished by a finish day, minutes or an outcome, and never while it waits", async () => {
  const engine = await openEngine();
  const ticket = { received_on: "2026-01-10", model: "Tern 4000" };
  await putAll(engine, {
    "ledger.tickets": [
      { ...ticket, ticket_no: "T1" },
      { ...ticket, ticket_no: "T2", finished_on: "2026-01-12" },
      { ...ticket, ticket_no: "T3", labour_min: 30 },
      { ...ticket, ticket_no: "T4", outcome: "beyond repair" },
      { ...ticket, ticket_no: "T5", outcome: "waiting", labour_min: 30, finished_on: "2026-01-12" },
    ],
  });
  expect(await engine.columns("select ticket_no, finished from visits order by ticket_no")).toEqual({
    ticket_no: ["T1", "T2", "T3", "T4", "T5"], finished: [false, true, true, true, false],
  });
});

test("the model list fills kind, seal and tier of the same maker's model; a kind written on the ticket wins", async () => {
  const engine = await openEngine();
  await putAll(engine, {
    "ledger.models": [
      { maker: "Halyard", model: "Tern 4000", reel_kind: "spinning", sealed: true, tier: "high", import_no: 1 },
      { model: "Tern 4000", reel_kind: "fly", import_no: 1 },
    ],
    "ledger.tickets": [
      { ticket_no: "T1", received_on: "2026-01-10", maker: "Halyard", model: "Tern 4000" },
      { ticket_no: "T2", received_on: "2026-01-10", maker: "Halyard", model: "Tern 4000", reel_kind: "other" },
      { ticket_no: "T3", received_on: "2026-01-10", model: "Tern 4000" },
      { ticket_no: "T4", received_on: "2026-01-10", maker: "Kestrel", model: "Tern 4000" },
    ],
  });
  expect(await engine.rows("select ticket_no, reel_kind, sealed, tier from visits order by ticket_no")).toEqual([
    { ticket_no: "T1", reel_kind: "spinning", sealed: true, tier: "high" },
    { ticket_no: "T2", reel_kind: "other", sealed: true, tier: "high" },
    { ticket_no: "T3", reel_kind: "fly", sealed: null, tier: null },
    { ticket_no: "T4", reel_kind: null, sealed: null, tier: null },
  ]);
});

test("an opening is planned or because of a complaint; accident and water count as complaint, nothing written as unknown", async () => {
  const engine = await openEngine();
  const came = ["planned", "complaint", "accident", "immersion", null];
  await putAll(engine, {
    "ledger.tickets": came.map((came_in, at) => ({ ticket_no: `T${at}`, received_on: "2026-01-10", model: "M", came_in })),
  });
  expect((await engine.columns("select opening, ticket_no from visits order by ticket_no")).opening)
    .toEqual(["planned", "complaint", "complaint", "complaint", null]);
});

test("a ticket that was settled anew counts once, as it was settled last", async () => {
  const engine = await openEngine();
  const ticket = { ticket_no: "T1", received_on: "2026-01-10", model: "M" };
  await putAll(engine, { "ledger.tickets": [{ ...ticket, labour_min: 90, import_no: 2 }, { ...ticket, labour_min: 20, import_no: 1 }] });
  expect(await engine.rows("select ticket_no, labour_min from visits")).toEqual([{ ticket_no: "T1", labour_min: 90 }]);
});
