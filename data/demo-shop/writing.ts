import { position } from "../../src/records/vocabulary.ts";
import type { Opening } from "./bench.ts";
import { JOB_WORDS, KIND_WORDS } from "./catalogue.ts";
import { dayOf, iso } from "./days.ts";
import type { Draws } from "./random.ts";
import { money, yesNo } from "./rows.ts";
import type { Row } from "./rows.ts";
import { MINUTES } from "./settings.ts";
import { AS_OF } from "./shop.ts";
import type { Past, Visit } from "./shop.ts";
import { complaintWords, modeOf, note } from "./words.ts";

/** A ticket as it is written down, beside the visit it tells of. */
export interface Written { visit: Visit; ticket: Row; findings: Row[] }

const SUSPICIOUS_FROM = dayOf(2024, 9, 1);
/** Share of places opened and found fine that still get a line. */
const FINE_WRITTEN = 0.08;
const PART_WITHOUT_LINE = 12, CONSUMABLES = 2.5, IMMERSION = 1.4, LARGE_SPINNING = 64;

function labourCharge(visit: Visit, past: Past): number {
  if (visit.warranty) return 0;
  const { model } = visit.reel.plan;
  const full = model.code === "JAR" ? past.world.lever_drag_price : model.large ? LARGE_SPINNING : MINUTES.get(`FULL ${model.kind}`)?.menu_price ?? 0;
  if (visit.job === "FULL") return full;
  return visit.job === "DUNK" ? money(full * IMMERSION) : MINUTES.get(`${visit.job} ${model.kind}`)?.menu_price ?? 0;
}

function partsCharge(visit: Visit): number {
  if (visit.warranty) return 0;
  const fitted = visit.openings.filter((opening) => opening.action === "replaced");
  const price = ({ line, qty }: Opening) => (line ? (line.price ?? 0) * qty : PART_WITHOUT_LINE);
  return money(fitted.reduce((sum, opening) => sum + price(opening), 0) + (visit.job === "FULL" ? CONSUMABLES : 0));
}

/** What is done to a place that is kept: by what the part is. */
function kept(opening: Opening): "left" | "cleaned" | "lubricated" | "adjusted" {
  if (opening.grade < 2) return "left";
  const { family } = position(opening.position);
  if (family === "spring" || family === "lever or pawl") return "adjusted";
  return family === "seal" || family === "gear" || family === "shaft" ? "lubricated" : "cleaned";
}

function finding(opening: Opening, ticket_no: string, visit: Visit, draw: Draws): Row {
  const changed = opening.action === "replaced" || opening.action === "wanted", missing = visit.finished === null && opening.wait_until !== null;
  const told = opening.lot !== null && draw.chance((visit.started ?? 0) < SUSPICIOUS_FROM ? 0.03 : 0.25);
  const mode = opening.failed || (opening.grade === 2 && draw.chance(0.4)) ? modeOf(opening, visit.reel.water !== "fresh", draw) : null;
  return {
    ticket_no, position: opening.position, part_no: changed ? opening.line?.part_no ?? null : null, mode, grade: opening.grade,
    action: missing ? "wanted" : changed ? opening.action : kept(opening), routine: changed ? yesNo(opening.routine) : null,
    qty: changed ? opening.qty : null, unit_cost: changed && opening.line ? opening.line.unit_cost : null, minutes: opening.minutes,
    note: told ? `lot ${opening.lot}` : null,
  };
}

/** A declined quote: what was looked at is noted, nothing is done. */
function quoted(visit: Visit, ticket_no: string, draw: Draws): Row[] {
  const life = visit.place === null || visit.place < 0 ? undefined : visit.reel.plan.places[visit.place]?.life;
  if (!life || visit.started === null || !draw.chance(0.6)) return [];
  const seen = { position: life.position, pinched: false } as Opening;
  return [{ ticket_no, position: life.position, mode: modeOf(seen, visit.reel.water !== "fresh", draw), grade: visit.grade, action: "left" }];
}

function write(visit: Visit, ticket_no: string, past: Past, draw: Draws): Written {
  const { reel } = visit, { model } = reel.plan, done = visit.finished !== null;
  const told = [...visit.openings, ...visit.extras].filter((opening) =>
    opening.failed || opening.grade >= 2 || opening.action === "replaced" || opening.action === "wanted" || draw.chance(FINE_WRITTEN));
  const findings = visit.job === "DIAG" ? quoted(visit, ticket_no, draw) : told.map((opening) => finding(opening, ticket_no, visit, draw));
  const faults = findings.flatMap((row) => (Number(row["grade"]) >= 3 ? [{ position: String(row["position"]), mode: String(row["mode"]) }] : []));
  return {
    visit, findings,
    ticket: {
      ticket_no, received_on: iso(visit.received), finished_on: visit.finished === null ? null : iso(visit.finished),
      maker: model.maker, model: model.model, reel_kind: KIND_WORDS[model.kind], serial: reel.serial, water: reel.water,
      salt_days: Math.round(visit.salt_days), use_days: Math.round(visit.use_days), months_since_service: visit.months, rinse: reel.rinse,
      came_in: visit.source, job: JOB_WORDS[visit.job], complaint: complaintWords(visit, draw), technician: visit.started === null ? null : visit.technician,
      batch: visit.batch, labour_min: visit.minutes, parts_wait_days: visit.wait_days, warranty: yesNo(visit.warranty), outcome: visit.outcome,
      labour_charge: done ? labourCharge(visit, past) : null, parts_charge: done ? partsCharge(visit) : null, note: note(visit, faults, draw) || null,
    },
  };
}

/** The tickets in the order the reels came in, numbered as the counter numbers them. */
export function written(past: Past, draw: Draws): Written[] {
  const visits = [...past.visits].sort((a, b) => a.received - b.received || a.reel.no - b.reel.no).filter((visit) => visit.received <= AS_OF);
  return visits.map((visit, i) => write(visit, `R-${1001 + i}`, past, draw));
}
