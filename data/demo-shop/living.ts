import { power } from "./random.ts";
import type { Draws } from "./random.ts";
import type { Reel } from "./fleet.ts";
import { knows } from "./settings.ts";
import type { JobCode } from "./settings.ts";
import type { World } from "./truths.ts";

export type Source = "planned" | "complaint" | "accident" | "immersion";
/** A reel's reason to come in this month. `place` is what the customer complains of; -1 is water inside, null no single place. */
export interface Call { source: Source; job: JobCode; place: number | null }

const BOOKED = [1.15, 1.65, 2.3, 1.75, 0.95, 0.5, 0.4, 0.4, 0.65, 0.95, 0.85, 0.55];
const FISHED = [0.02, 0.03, 0.05, 0.09, 0.12, 0.13, 0.14, 0.14, 0.12, 0.09, 0.05, 0.02];
const HAZARD = { private: 0.052, charter: 0.26, club: 0.13 } as const;
/** Complaints per fished day where the state of the reel does not matter. */
const BLIND_COMPLAINTS = 0.0011;
const clip = (value: number, high: number) => Math.min(high, Math.max(0, value));

/** Grade 0…4 of a place: how much of its life is used up. */
export function gradeOf(reel: Reel, place: number): number {
  const used = (reel.wear[place] ?? 0) / (reel.life[place] ?? 1);
  return used < 0.3 ? 0 : used < 0.6 ? 1 : used < 1 ? 2 : used < 1.3 ? 3 : 4;
}

function sealed(reel: Reel): "open" | "sealed" | "pinched" {
  const { plan } = reel;
  if (!plan.model.sealed) return "open";
  if (reel.pinched) return "pinched";
  return plan.seal_at < 0 || gradeOf(reel, plan.seal_at) < 3 ? "sealed" : "open";
}

/** Days fished this month; wear is added to every place. */
export function fish(reel: Reel, month: number, world: World, draw: Draws): number {
  const days = draw.poisson(reel.days_per_year * (world.seasons ? FISHED[month % 12] ?? 0 : 1 / 12));
  if (days === 0) return 0;
  reel.use_days += days;
  reel.salt_days += days * (1 - reel.mix.fresh);
  const { wear } = reel, rate = reel.rate[sealed(reel)];
  for (let at = 0; at < wear.length; at++) wear[at] = (wear[at] ?? 0) + days * (rate[at] ?? 0);
  return days;
}

/** Salt-sensitive places suffer from a ducking as from 55 days of fishing. */
export function dunk(reel: Reel): void {
  reel.plan.places.forEach((place, at) => {
    if (place.life.salt_class >= 2) reel.wear[at] = (reel.wear[at] ?? 0) + 55;
  });
}

/** A booking grows likelier with the full months since the last visit. */
function bookedHazard(reel: Reel, month: number, world: World): number {
  const waited = month - reel.last_visit_month - 1;
  const eager = reel.owner === "charter" ? clip((waited - 3) / 5, 1.3) : reel.owner === "club" ? clip((waited - 6) / 8, 1.1)
    : clip((waited - 6) / 12, 1) * (waited > 40 ? 0.55 : 1);
  const dear = Math.min(1.6, Math.max(0.55, power(reel.plan.booked_price / 150, 0.35)));
  return HAZARD[reel.owner] * dear * eager * (world.seasons ? BOOKED[month % 12] ?? 0 : 1);
}

/** Complaints per fished day, from every place that makes itself felt and from water inside. */
function felt(reel: Reel, world: World): number {
  if (!world.state_brings_in) return BLIND_COMPLAINTS;
  const { wear, life, plan: { places } } = reel;
  let hazard = reel.pinched ? 0.01 : 0;
  for (let at = 0; at < wear.length; at++) {
    const used = (wear[at] ?? 0) / (life[at] ?? 1);
    if (used >= 1) hazard += (places[at]?.life.notice ?? 0) * (used < 1.3 ? 0.01 : 0.05);
  }
  return hazard;
}

/** What is complained of: the place that shows most, -1 for water inside. */
function complaint(reel: Reel, world: World, draw: Draws): Call {
  const weights = reel.plan.places.map((place, at) => {
    const grade = world.state_brings_in ? gradeOf(reel, at) : 3;
    return grade < 3 ? 0 : place.life.notice * (grade === 4 ? 5 : 1);
  });
  const worst = draw.weighted([...weights.keys(), -1], [...weights, reel.pinched ? 1 : 0]);
  const asked: JobCode = worst === -1 ? "SEAL" : reel.plan.places[worst]?.life.complaint_job ?? "FULL";
  const job = draw.chance(0.36) || !knows(reel.plan.model.kind, asked) ? "FULL" : asked;
  return { source: "complaint", job, place: worst };
}

/**
 * Why the reel comes in this month, or null. A ducking that is not brought in still leaves its mark.
 *
 * @param home a uniform draw the reel shares with the others of its charter or club, which often book together
 */
export function call(reel: Reel, days: number, month: number, home: number, world: World, draw: Draws): Call | null {
  const declines = (source: Source) => draw.chance(source === "complaint" && reel.plan.model.tier === "budget" ? 0.1 : 0.03);
  if (draw.chance(1 - Math.exp(-0.0016 * days * reel.mix.salt))) {
    if (draw.chance(0.7)) return { source: "immersion", job: "DUNK", place: null };
    dunk(reel);
  }
  const spinning = reel.plan.model.kind === "S";
  if (draw.chance((1 - Math.exp(-0.0006 * days)) * 0.8)) return { source: "accident", job: spinning && draw.chance(0.5) ? "BAIL" : "HDL", place: null };
  const booked = 1 - Math.exp(-bookedHazard(reel, month, world)), decides = reel.owner !== "private" && draw.chance(0.5) ? home : draw.uniform();
  const came: Call | null = draw.chance(1 - Math.exp(-days * felt(reel, world))) ? complaint(reel, world, draw)
    : decides < booked ? { source: "planned", job: draw.chance(0.82) ? "FULL" : "EXT", place: null } : null;
  return came && declines(came.source) ? { ...came, job: "DIAG" } : came;
}
