import { power } from "./random.ts";
import type { Rinse } from "./settings.ts";

/** What was planted in the demo shop on purpose, so that a tool's answers can be checked against it. */
export interface Truth { code: TruthCode; truth: string; planted: string; without: string }
export type TruthCode = `PT${1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15}`;

export const TRUTHS: readonly Truth[] = [
  { code: "PT1", truth: "The Whinbeck 40's one-way clutch fails about three times as often", planted: "its life is shortened to 0.391 (hazard × 4.5)", without: "life like any mid-tier reel's" },
  { code: "PT2", truth: "Both Ekholts' body seals get pinched when the body is closed", planted: "18 in 100 closings pinch the seal, 2 in 100 on the Bruskar", without: "2 in 100 on all" },
  { code: "PT3", truth: "Nine models share the 7×11×3 bearing", planted: "bill of bearings", without: "only two models use it, each other has a size of its own" },
  { code: "PT4", truth: "A bad batch of 4×7×2.5 bearings, lot FL-2404, was fitted from May to September 2024", planted: "70 in 100 fittings of those months; life × 0.22 in the line roller, × 0.60 in knobs", without: "no bad batch" },
  { code: "PT5", truth: "Reels that are never rinsed wear twice as fast in salt", planted: "salt and brackish wear × 2.0 never, × 1.4 sometimes", without: "rinsing makes no difference" },
  { code: "PT6", truth: "The Slipdene's clutch looks bad only because of how these reels live and come in", planted: "a cheap, unsealed salt-water reel whose owners seldom book a service; its clutch is as good as others", without: "lives in fresh water and is booked in like a mid-price reel" },
  { code: "PT7", truth: "The junior technician learns", planted: "minutes × 1.40 in January 2023, falling to × 1.10 within a year; a quarter of the lever drags go to someone else", without: "as fast as the senior from the first day" },
  { code: "PT8", truth: "Slack in winter, a jam in spring", planted: "month factors for booked services and for days fished", without: "every month alike" },
  { code: "PT9", truth: "The Jarnvik is rare: nothing can be said about it", planted: "12 of 1,000 reels, no excess", without: "96 of 1,000 reels" },
  { code: "PT10", truth: "From July 2024 the drag knob seal is replaced at every full service of a spinning reel", planted: "routine replacement, graded as found", without: "no such habit" },
  { code: "PT11", truth: "The full service of the two-speed lever drag is under-priced", planted: "menu 78 for about 112 minutes at 54 an hour", without: "menu 118" },
  { code: "PT12", truth: "Assorted stock lines cannot be planned", planted: "one part number stands for many", without: "one part number per model" },
  { code: "PT13", truth: "Two suppliers deliver later than they quote", planted: "Zetfield 24 ± 9 days for 18, Far Lantern 34 ± 14 for 21", without: "every supplier as quoted" },
  { code: "PT14", truth: "Money lies dead in one bearing size", planted: "63 pieces of 7×13×4, about 1.5 used a year", without: "2 pieces" },
  { code: "PT15", truth: "The mix of booked and complaint visits moves every rate", planted: "a failed part brings its reel in", without: "reels come in regardless of their state" },
];

/** The shop's world with some truths turned off. */
export interface World {
  whinbeck_clutch_life: number;
  ekholt_pinch: number;
  own_bearing_sizes: boolean;
  bad_batch: boolean;
  rinse_wear: Readonly<Record<Rinse, number>>;
  slipdene_harmless: boolean;
  junior_learns: boolean;
  seasons: boolean;
  jarnvik_fleet_share: number;
  seal_habit: boolean;
  lever_drag_price: number;
  assorted_lines: boolean;
  late_suppliers: boolean;
  dead_stock: number;
  state_brings_in: boolean;
}

/** @throws {RangeError} if a code names no truth */
export function worldWithout(without: readonly string[] | "all"): World {
  const unknown = without === "all" ? [] : without.filter((code) => !TRUTHS.some((truth) => truth.code === code));
  if (unknown.length > 0) throw new RangeError(`makeDemo: without needs codes PT1 to PT15, got ${unknown.join(", ")}`);
  const on = (code: TruthCode) => without !== "all" && !without.includes(code);
  return {
    whinbeck_clutch_life: on("PT1") ? power(4.5, -1 / 1.6) : 1,
    ekholt_pinch: on("PT2") ? 0.18 : 0.02,
    own_bearing_sizes: !on("PT3"),
    bad_batch: on("PT4"),
    rinse_wear: on("PT5") ? { always: 1, sometimes: 1.4, never: 2 } : { always: 1, sometimes: 1, never: 1 },
    slipdene_harmless: !on("PT6"),
    junior_learns: on("PT7"),
    seasons: on("PT8"),
    jarnvik_fleet_share: on("PT9") ? 0.012 : 0.096,
    seal_habit: on("PT10"),
    lever_drag_price: on("PT11") ? 78 : 118,
    assorted_lines: on("PT12"),
    late_suppliers: on("PT13"),
    dead_stock: on("PT14") ? 63 : 2,
    state_brings_in: on("PT15"),
  };
}
