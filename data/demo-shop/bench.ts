import type { Need } from "./catalogue.ts";
import { dayOf } from "./days.ts";
import type { Day } from "./days.ts";
import type { Reel } from "./fleet.ts";
import { gradeOf } from "./living.ts";
import type { Call } from "./living.ts";
import type { Draws } from "./random.ts";
import type { StockLine } from "./settings.ts";
import type { Stockroom } from "./shelf.ts";
import type { World } from "./truths.ts";

/** What the bench did at one opened place. `wait_until` is the day a missing part arrives, null when none was missing. */
export interface Opening {
  place: number | null; position: string; grade: number; failed: boolean; pinched: boolean; complained: boolean;
  action: "left" | "cleaned" | "replaced" | "wanted"; routine: boolean;
  line: StockLine | null; qty: number; wait_until: Day | null; lot: string | null; minutes: number | null;
}

const BATCH_FROM = dayOf(2024, 5, 1), BATCH_TO = dayOf(2024, 9, 30), HABIT_FROM = dayOf(2024, 7, 1), OLD_NUMBER_UNTIL = dayOf(2023, 7, 1);
const BODY_JOBS = new Set(["FULL", "DUNK", "GEAR", "SEAL"]);
/** Share of all fittings of the batch's months that are bad, and of fittings with another supplier's bearing. */
const BAD_SHARE = 0.7, OTHER_NUMBER = 0.12;
/** Of reels whose part is missing: the share whose owner takes it away as it is, by how much the part matters. */
const TAKEN_AWAY = { A: 0.12, B: 0.45 } as const;

export interface Bench { world: World; draw: Draws; stock: Stockroom | null }

/** Which of the lines that serve a place is fitted: mostly the usual one, now and then another supplier's or the old number. */
function chosen(need: Need, day: Day, draw: Draws): StockLine {
  const [usual, other] = need.lines;
  if (!usual) throw new RangeError("chosen: needs at least one stock line");
  if (other?.name.includes("old number")) return day < OLD_NUMBER_UNTIL ? other : usual;
  return other && draw.chance(OTHER_NUMBER) ? other : usual;
}

function lotOf(line: StockLine, bad: boolean, day: Day): string | null {
  if (line.supplier !== "FLI") return null;
  if (bad) return "FL-2404";
  const quarter = Math.floor((day - dayOf(2023, 1, 1)) / 91.3);
  return `FL-${23 + Math.floor(quarter / 4)}${String((quarter % 4) * 3 + 2).padStart(2, "0")}`;
}

/** Fits a new part: a new life, shorter when the bearing is of the bad batch. */
function renew(reel: Reel, at: number, line: StockLine | null, day: Day, bench: Bench): string | null {
  const place = reel.plan.places[at];
  if (!place) throw new RangeError(`renew: the reel has no place ${at}`);
  const { position } = place.life, { draw, world } = bench;
  const imported = line?.supplier === "FLI" && line.size === "4x7x2.5" && day >= BATCH_FROM && day <= BATCH_TO;
  const bad = world.bad_batch && imported && draw.chance(BAD_SHARE / (1 - OTHER_NUMBER));
  const shorter = !bad ? 1 : position === "line_roller_bearing" ? 0.22 : 0.6;
  reel.wear[at] = 0;
  reel.life[at] = draw.weibull(place.life.shape, place.scale_days * shorter);
  reel.bad_batch[at] = bad ? 1 : 0;
  return line && lotOf(line, bad, day);
}

/** Replaces a part from the shelf; a missing one is waited for, or the owner takes the reel away without it. */
function replace(opening: Opening, need: Need | null, day: Day, bench: Bench): Opening {
  if (!need) return { ...opening, action: "replaced", qty: 1 };
  const qty = need.screws ? 1 + bench.draw.below(4) : need.qty;
  const line = chosen(need, day, bench.draw), done = { ...opening, action: "replaced" as const, line, qty };
  if (!bench.stock || line.use_per_year === null || bench.stock.take(line, qty)) return done;
  const away = opening.routine || bench.draw.chance(TAKEN_AWAY[line.criticality]);
  return away ? { ...done, action: "wanted" } : { ...done, wait_until: bench.stock.waitFor(line, qty) };
}

function inspect(reel: Reel, at: number, call: Call, day: Day, bench: Bench): Opening {
  const place = reel.plan.places[at], { world, draw } = bench;
  if (!place) throw new RangeError(`inspect: the reel has no place ${at}`);
  const { position, routine_share } = place.life, pinched = at === reel.plan.seal_at && reel.pinched;
  const grade = Math.max(gradeOf(reel, at), pinched ? 3 : 0), failed = grade >= 3;
  const habit = world.seal_habit && position === "drag_knob_seal" && call.job === "FULL" && day >= HABIT_FROM;
  const routine = !failed && ((grade === 2 && draw.chance(routine_share)) || habit);
  const seen: Opening = {
    place: at, position, grade, failed, pinched, complained: call.place === at, routine, action: grade >= 2 ? "cleaned" : "left",
    line: null, qty: 0, wait_until: null, lot: null, minutes: null,
  };
  if (!failed && !routine) return seen;
  return replace(seen, place.need, day, bench);
}

/** Opens the places of the job, in their order, and leaves the reel as the bench leaves it. */
export function work(reel: Reel, call: Call, day: Day, bench: Bench): Opening[] {
  const { plan } = reel, opens = plan.opens.get(call.job) ?? [];
  const extra = call.place !== null && call.place >= 0 && call.job !== "DIAG" && !opens.includes(call.place) ? [call.place] : [];
  const openings = [...opens, ...extra].map((at) => inspect(reel, at, call, day, bench));
  for (const opening of openings) {
    const at = opening.place ?? -1;
    if (opening.action === "replaced") {
      opening.lot = renew(reel, at, opening.line, day, bench);
      if (at === plan.seal_at) reel.pinched = false;
    } else if (call.job === "FULL") reel.wear[at] = (reel.wear[at] ?? 0) * 0.93;
  }
  if (BODY_JOBS.has(call.job) && plan.pinch > 0 && bench.draw.chance(plan.pinch)) reel.pinched = true;
  return openings;
}
