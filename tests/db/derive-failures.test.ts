import { expect, test } from "vitest";
import { openEngine } from "./open.ts";
import { putAll } from "./put.ts";

const TICKET = { maker: "Halyard", model: "M", serial: "S1", outcome: "returned", came_in: "planned" };
const FAILED = { action: "replaced" };

test("a failure costs the minutes and parts written for it; without minutes a complaint's job is shared out over what had failed", async () => {
  const engine = await openEngine();
  await putAll(engine, {
    "ledger.tickets": [
      { ...TICKET, ticket_no: "T1", received_on: "2026-01-10", labour_min: 60, came_in: "complaint", parts_wait_days: 8 },
      { ...TICKET, ticket_no: "T2", received_on: "2026-03-10", labour_min: 60, serial: "S2" },
    ],
    "ledger.parts": [{ part_no: "P1", unit_cost: 3 }],
    "ledger.findings": [
      { ticket_no: "T1", position: "roller", ...FAILED, part_no: "P1", qty: 2, minutes: 20, mode: "corroded" },
      { ticket_no: "T1", position: "roller", grade: 4, mode: "seized" },
      { ticket_no: "T1", position: "clutch", ...FAILED, part_no: "P1", unit_cost: 5, mode: "slipping" },
      { ticket_no: "T1", position: "seal", ...FAILED, routine: true, part_no: "P1" },
      { ticket_no: "T2", position: "clutch", grade: 3 },
    ],
  });
  expect(await engine.rows("select v.ticket_no, f.position, f.modes, f.minutes, f.parts, f.waiting_days from failures f join visits v using (visit) order by v.ticket_no, f.position")).toEqual([
    // 60 minutes over two failed parts; the roller's own minutes are written.
    { ticket_no: "T1", position: "clutch", modes: ["slipping"], minutes: 30, parts: 5, waiting_days: 4 },
    { ticket_no: "T1", position: "roller", modes: ["corroded", "seized"], minutes: 20, parts: 6, waiting_days: 4 },
    { ticket_no: "T2", position: "clutch", modes: null, minutes: 0, parts: 0, waiting_days: 0 },
  ]);
});

test("a part that failed again knows the finished visit that had put it right; new damage, another reel and a reel without a serial know none", async () => {
  const engine = await openEngine();
  const on = (ticket_no: string, received_on: string, more = {}) => ({ ...TICKET, ticket_no, received_on, finished_on: received_on, ...more });
  const tickets = [
    on("A1", "2026-01-10", { finished_on: "2026-01-20" }), on("A2", "2026-02-10", { finished_on: null, outcome: "waiting" }), on("A3", "2026-03-01"),
    on("A4", "2026-03-11", { came_in: "immersion" }), on("B1", "2026-02-01", { serial: "S2" }), on("C1", "2026-02-01", { serial: null }), on("C2", "2026-02-05", { serial: null }),
  ];
  await putAll(engine, { "ledger.tickets": tickets, "ledger.findings": tickets.map(({ ticket_no }) => ({ ticket_no, position: "roller", ...FAILED })) });
  const again = await engine.rows("select v.ticket_no, b.ticket_no as before, f.put_right_days as days from failures f join visits v using (visit) left join visits b on b.visit = f.put_right order by v.ticket_no");
  expect(again.map(Object.values)).toEqual([
    ["A1", null, null], ["A2", "A1", 21], ["A3", "A1", 40], ["A4", null, null], ["B1", null, null], ["C1", null, null], ["C2", null, null],
  ]);
});
