import type { ModelPlan } from "./catalogue.ts";
import type { Day } from "./days.ts";
import type { Draws } from "./random.ts";
import type { Rinse, Water } from "./settings.ts";
import type { World } from "./truths.ts";

export type Owner = "private" | "charter" | "club";
/** One reel: who fishes it, how, and the state of each of its places. Months count from January 2015. */
export interface Reel {
  no: number; serial: string; plan: ModelPlan; owner: Owner; household: number; rinse: Rinse; water: Water;
  mix: Record<Water, number>; days_per_year: number; bought_month: number;
  wear: Float64Array; life: Float64Array; bad_batch: Uint8Array;
  /** wear days a fished day adds to each place: with the body open to water, behind a good seal, behind a pinched one */
  rate: { open: Float64Array; sealed: Float64Array; pinched: Float64Array };
  pinched: boolean; salt_days: number; use_days: number; last_visit_month: number; last_finished: Day; gone: boolean;
}

export const FIRST_YEAR = 2015;
export const FLEET = 2330;
const ACCELERATION = [1, 1.4, 2.2, 3.2];
const WATERS = ["fresh", "brackish", "salt"] as const;
const month = (year: number, month0: number) => (year - FIRST_YEAR) * 12 + month0;

function waterMix(plan: ModelPlan, draw: Draws): { water: Water; mix: Record<Water, number> } {
  const water = draw.weighted(WATERS, WATERS.map((one) => plan.mix[one]));
  const others = WATERS.filter((one) => one !== water), left = others.reduce((sum, one) => sum + plan.mix[one], 0);
  const main = left > 0 ? draw.beta(9, 1.5) : 1;
  const mix = { fresh: 0, brackish: 0, salt: 0, [water]: main } as Record<Water, number>;
  for (const one of others) mix[one] = left > 0 ? ((1 - main) * plan.mix[one]) / left : 0;
  return { water, mix };
}

function rates(mix: Record<Water, number>, rinse: number, plan: ModelPlan): Reel["rate"] {
  const at = (acceleration: number, salt_class: number) => {
    const habit = salt_class === 0 ? 1 : rinse;
    return mix.fresh + mix.brackish * (1 + 0.45 * (acceleration - 1)) * habit + mix.salt * acceleration * habit;
  };
  const behind = (share: number) => Float64Array.from(plan.places, ({ life, behind_seal }) => {
    const fast = ACCELERATION[life.salt_class] ?? 1;
    return at(1 + (fast - 1) * (behind_seal ? share : 1), life.salt_class);
  });
  return { open: behind(1), sealed: behind(0.5), pinched: behind(1.8) };
}

function boughtMonth(plan: ModelPlan, draw: Draws): number {
  const first = month(Math.max(plan.model.on_sale, FIRST_YEAR), 0);
  const last = draw.chance(0.38) ? month(2025, 6) : month(2023, 0);
  const ended = plan.model.discontinued_on === "" ? Infinity : month(Number(plan.model.discontinued_on.slice(0, 4)) + 1, 0);
  return first + draw.below(Math.min(last, ended) - first);
}

const DAYS = {
  private: (draw: Draws) => Math.min(110, draw.logNormal(15, 0.7)),
  charter: (draw: Draws) => draw.logNormal(85, 0.35),
  club: (draw: Draws) => draw.logNormal(40, 0.4),
} as const;

function reel(no: number, plan: ModelPlan, owner: Owner, world: World, draw: Draws): Reel {
  const habit = draw.weighted(["always", "sometimes", "never"] as const, [0.42, 0.34, 0.24]);
  const rinse = owner === "charter" && draw.chance(0.5) ? "always" : habit;
  const { water, mix } = waterMix(plan, draw), count = plan.places.length;
  const bought_month = boughtMonth(plan, draw);
  return {
    no, plan, owner, rinse, water, mix, bought_month, serial: `${plan.model.code}-${String(no * 31 + draw.below(31)).padStart(5, "0")}`,
    household: owner === "private" ? no : draw.below(owner === "charter" ? 16 : 20), days_per_year: DAYS[owner](draw),
    wear: new Float64Array(count), life: Float64Array.from(plan.places, (place) => draw.weibull(place.life.shape, place.scale_days)),
    bad_batch: new Uint8Array(count), rate: rates(mix, world.rinse_wear[rinse], plan), pinched: false, salt_days: 0, use_days: 0,
    last_visit_month: bought_month, last_finished: -Infinity, gone: false,
  };
}

/** As many of each value as its share of the fleet, in random order. */
function dealt<Value>(values: readonly Value[], shares: readonly number[], draw: Draws): Value[] {
  const total = shares.reduce((sum, share) => sum + share, 0);
  let upto = 0, have = 0;
  const cards = values.flatMap((value, i) => {
    upto += (shares[i] ?? 0) / total;
    const count = Math.round(upto * FLEET) - have;
    have += count;
    return Array.from({ length: count }, () => ({ value, at: draw.uniform() }));
  });
  return cards.sort((a, b) => a.at - b.at).map((card) => card.value);
}

export function fleet(plans: readonly ModelPlan[], world: World, draw: Draws): Reel[] {
  const owners = dealt(["private", "charter", "club"] as const, [0.91, 0.04, 0.05], draw);
  return dealt(plans, plans.map((plan) => plan.share), draw).map((plan, no) => reel(no, plan, owners[no] ?? "private", world, draw));
}
