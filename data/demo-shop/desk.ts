import type { Bench, Opening } from "./bench.ts";
import { extraNeed } from "./catalogue.ts";
import type { EXTRA_POSITIONS, ModelPlan } from "./catalogue.ts";
import { dayOf } from "./days.ts";
import type { Draws } from "./random.ts";
import { MINUTES } from "./settings.ts";
import type { JobCode, StockLine } from "./settings.ts";
import type { Visit } from "./shop.ts";
import type { World } from "./truths.ts";

export type Technician = "T1" | "T2" | "OWN";
export type Outcome = "returned" | "beyond repair" | "abandoned" | "waiting";

/** Who does the job; a quarter of the lever drags the junior would have had go to another. */
export function technician(plan: ModelPlan, job: JobCode, draw: Draws): Technician {
  const who = draw.weighted(["T1", "T2", "OWN"] as const, [0.54, 0.31, 0.15]);
  const lever = plan.model.code === "JAR" && job === "FULL";
  return who === "T2" && lever && draw.chance(0.25) ? draw.weighted(["T1", "OWN"] as const, [0.78, 0.22]) : who;
}

/** How many times the usual minutes this person takes. */
export function pace(who: Technician, day: number, world: World): number {
  if (who === "OWN") return 1;
  if (who === "T1" || !world.junior_learns) return 0.94;
  return Math.max(1.1, 1.4 - (0.3 * (day - dayOf(2023, 1, 1))) / 365.25);
}

/** Bench minutes: the job's own, more for each part and for seized screws. */
export function minutesOf(visit: Visit, world: World, draw: Draws): number {
  const { model } = visit.reel.plan, own = visit.job === "FULL" ? MINUTES.get(`FULL ${model.kind}:${model.code}`) : undefined;
  const base = own ?? MINUTES.get(`${visit.job} ${model.kind}`);
  if (!base) throw new RangeError(`minutesOf: no minutes for ${visit.job} on kind ${model.kind}`);
  const parts = visit.openings.filter((opening) => opening.action === "replaced").length;
  const seized = visit.openings.find((opening) => opening.failed && opening.position.endsWith("_screws"));
  if (seized) seized.minutes = draw.weighted([12, 20, 35], [0.5, 0.35, 0.15]);
  return Math.max(1, Math.round(draw.logNormal(base.median_min, base.log_sigma) * pace(visit.technician, visit.received, world) + 3 * parts + (seized?.minutes ?? 0)));
}

/** Tins and bottles opened, and small parts changed without being worn, per full service that can need them. */
const PER_FULL_SERVICE = { line_roller_seal: 0.95, pinion_bearing_rear: 0.01, grease_gear: 9 / 740, oil: 7 / 740, grease_drag: 3 / 740, cleaner: 8 / 740 } as const;

export function extras(plan: ModelPlan, job: JobCode, lines: readonly StockLine[], bench: Bench): Opening[] {
  if (job !== "FULL") return [];
  const positions = Object.keys(PER_FULL_SERVICE) as (typeof EXTRA_POSITIONS)[number][];
  return positions.flatMap((position) => {
    const need = extraNeed(plan.model, position, lines, bench.world), line = need?.lines[0];
    if (!line || !bench.draw.chance(PER_FULL_SERVICE[position])) return [];
    const had = bench.stock === null || bench.stock.take(line, 1), failed = position === "pinion_bearing_rear";
    return [{
      place: null, position, grade: failed ? 3 : 1, failed, pinched: false, complained: false, action: had ? "replaced" as const : "wanted" as const,
      routine: !failed, line, qty: 1, wait_until: null, lot: null, minutes: null,
    }];
  });
}

/** How it ended: a declined quote may be a private reel's end, and now and then nobody fetches one; charters and clubs come back. */
export function outcomeOf(visit: Visit, draw: Draws): Outcome {
  const { model } = visit.reel.plan;
  if (visit.reel.owner !== "private") return "returned";
  if (visit.job === "DIAG" && draw.chance(0.25)) return "beyond repair";
  const dear = model.tier === "budget" && (MINUTES.get(`${visit.job} ${model.kind}`)?.menu_price ?? 0) > 0.6 * model.new_price;
  return draw.chance(dear ? 0.05 : model.tier === "premium" ? 0.013 : 0.034) ? "abandoned" : "returned";
}
