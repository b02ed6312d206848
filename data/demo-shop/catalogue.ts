import { coverage } from "../../src/records/coverage.ts";
import { BEARINGS, LIVES, MODELS, STOCK, knows } from "./settings.ts";
import type { JobCode, Life, Model, StockLine, Water } from "./settings.ts";
import type { World } from "./truths.ts";

export const JOB_WORDS: Readonly<Record<JobCode, string>> = {
  FULL: "full service", EXT: "external", LR: "line roller", DRAG: "drag", AR: "anti-reverse", BAIL: "bail", GEAR: "gear",
  LW: "level wind", SPB: "spool and brakes", HDL: "handle", SEAL: "reseal", DUNK: "immersion", DIAG: "diagnosis",
};
export const KIND_WORDS = { S: "spinning", C: "conventional", B: "baitcaster", F: "fly" } as const;
/** Positions behind the body seal, whose salt wear a good seal halves. */
const BEHIND_SEAL = new Set(["main_bearing_handle", "main_bearing_plate", "pinion_bearing_front", "pinion_gear", "main_gear", "ar_clutch",
  "osc_slider", "fly_oneway", "fly_spool_bearing", "fly_drag_disc"]);
const TIER = { premium: 1.3, upper: 1.15, mid: 1, budget: 0.7 } as const;
const CLUTCH_TIER = { premium: 1.15, upper: 1.1, mid: 1, budget: 0.9 } as const;

/** Which stock lines serve a position of a model; the first is the usual one. */
export interface Need { lines: StockLine[]; qty: number; screws: boolean }
export interface Place { life: Life; scale_days: number; behind_seal: boolean; need: Need | null }
export interface ModelPlan {
  model: Model; share: number; mix: Record<Water, number>; booked_price: number;
  places: Place[]; index: Map<string, number>; opens: Map<JobCode, number[]>; pinch: number; seal_at: number;
}

/** Sizes the sharing models would have, were there no shared drive bearing. */
const OWN_SIZE: Readonly<Record<string, string>> = { DOV: "6x12x4", PIP: "6x10x3", SLI: "7x17x5", YAW: "6x13x5", VES: "6x17x6", SPR: "7x19x6", PID: "5x14x5" };

/** The stock lines of this world: the settings', changed where a truth is off. */
export function stockLines(world: World): StockLine[] {
  const lines = STOCK.map((line) => (line.part_no === "BRG-7x13x4" ? { ...line, on_hand: world.dead_stock } : line));
  const own = world.own_bearing_sizes ? Object.entries(OWN_SIZE).map(([code, size]) => ownSize(lines, code, size)) : [];
  return [...lines, ...own].flatMap((line) => (world.assorted_lines || !line.part_no.endsWith("-MIX") ? [line] : perModel(line)));
}

function ownSize(lines: StockLine[], code: string, size: string): StockLine {
  const like = lines.find((line) => line.part_no === "BRG-7x11x3");
  if (!like) throw new RangeError("stockLines: the settings lack BRG-7x11x3");
  return { ...like, part_no: `BRG-${size}`, name: `${size} sealed stainless`, size, replaces: "", models: [code], use_per_year: 16 };
}

function perModel(line: StockLine): StockLine[] {
  return line.models.map((code) => ({
    ...line, part_no: `${line.part_no.replace("-MIX", "")}-${code}`, name: `${line.name.replace(/, assorted.*|, per model.*/, "")}, ${code}`, models: [code],
    on_hand: Math.round(line.on_hand / line.models.length), on_order: 0, use_per_year: (line.use_per_year ?? 0) / line.models.length,
  }));
}

function needOf(model: Model, position: string, lines: readonly StockLine[], world: World): Need | null {
  const bearing = BEARINGS.find((use) => use.model === model.code && use.position === position);
  if (bearing) {
    const size = world.own_bearing_sizes && bearing.size === "7x11x3" ? OWN_SIZE[model.code] ?? bearing.size : bearing.size;
    return { lines: lines.filter((line) => line.size === size && line.family === "ball bearing"), qty: bearing.qty, screws: false };
  }
  const fitting = lines.filter((line) => line.positions.includes(position) && (line.models.length === 0 || line.models.includes(model.code)));
  return fitting.length === 0 ? null : { lines: fitting, qty: 1, screws: position.endsWith("_screws") };
}

/** Positions outside the simulated lives that the bench still fits parts to. */
export const EXTRA_POSITIONS = ["line_roller_seal", "pinion_bearing_rear", "grease_gear", "oil", "grease_drag", "cleaner"] as const;
export const extraNeed = (model: Model, position: (typeof EXTRA_POSITIONS)[number], lines: readonly StockLine[], world: World): Need | null =>
  (model.absent.includes(position) ? null : needOf(model, position, lines, world));

/** Positions a job opens: what the coverage list inspects, and what the bench opens on top of it for that position's faults. */
function opened(model: Model, places: readonly Place[], job: JobCode): number[] {
  if (job === "DIAG") return [];
  const kind = KIND_WORDS[model.kind], word = JOB_WORDS[job];
  const listed = new Set(coverage.filter((row) => row.reel_kind === kind && row.job === word && row.level === "inspected" && row.tier_not !== model.tier)
    .map((row) => row.position));
  return places.flatMap(({ life }, at) => (job === "FULL" || job === "DUNK" || listed.has(life.position) || life.opened_by.includes(job) ? [at] : []));
}

function plan(model: Model, lines: readonly StockLine[], world: World): ModelPlan {
  const harmless = world.slipdene_harmless && model.code === "SLI";
  const places = LIVES.filter((life) => life.kinds.includes(model.kind) && !model.absent.includes(life.position)).map((life): Place => {
    const clutch = life.position === "ar_clutch" || life.position === "fly_oneway";
    const tier = clutch ? (harmless ? 1 : CLUTCH_TIER[model.tier]) : TIER[model.tier];
    const planted = clutch && model.code === "WHI" ? world.whinbeck_clutch_life : 1;
    return {
      life, scale_days: life.scale_days * tier * planted, behind_seal: model.sealed && BEHIND_SEAL.has(life.position),
      need: needOf(model, life.position, lines, world),
    };
  });
  const jobs = (Object.keys(JOB_WORDS) as JobCode[]).filter((job) => knows(model.kind, job));
  const index = new Map(places.map((place, at) => [place.life.position, at] as const));
  return {
    model, places, index, share: model.code === "JAR" ? world.jarnvik_fleet_share : model.fleet_share,
    mix: harmless ? { fresh: 0.8, brackish: 0.15, salt: 0.05 } : model.mix, booked_price: harmless ? 150 : model.new_price,
    opens: new Map(jobs.map((job) => [job, opened(model, places, job)] as const)),
    pinch: !index.has("body_seal") ? 0 : model.code.startsWith("E") ? world.ekholt_pinch : 0.02, seal_at: index.get("body_seal") ?? -1,
  };
}

export const modelPlans = (lines: readonly StockLine[], world: World): ModelPlan[] => MODELS.map((model) => plan(model, lines, world));
