import type { Engine } from "../../db/engine.ts";
import { EVERYTHING } from "../filter.ts";
import { ALL_FAILURES, failureRates } from "../failures/failure-rates.ts";
import type { RestockLine } from "../stock/restock-line.ts";
import { wornByNow } from "../wear/ask-wear.ts";
import type { WearAsk } from "../wear/ask-wear.ts";
import type { Exposures, FailedByNow } from "../wear/failed-by-now.ts";
import { causesOf, type Causes, type ComplaintFaults, type UsualCause } from "./causes.ts";
import { likelyCauses, partChances, type LikelyCause, type PartChance } from "./chances.ts";
import complaintFaultsSql from "./complaint-faults.sql?raw";
import type { ComplaintWords } from "./complaint-of.ts";
import fittedPartsSql from "./fitted-parts.sql?raw";
import { partsToPull, type FittedPart, type PartsToPull } from "./parts-to-pull.ts";

/** A reel on the bench; null means not known. */
export interface ReelOnBench extends Exposures {
  readonly reel_kind: string;
  readonly maker: string | null;
  readonly model: string | null;
  readonly water: string | null;
  readonly rinse: string | null;
  /** Code of the complaint; null for planned work. */
  readonly complaint: string | null;
}

/** The trade's lists, which an answer does not fetch by itself. */
export interface TradeLists { readonly usual: readonly UsualCause[]; readonly complaints: readonly ComplaintWords[] }

export interface ReelCard {
  readonly reel: ReelOnBench;
  /** What the complaint may be, likeliest first; null for planned work or a complaint nobody knows on such reels. */
  readonly causes: (Omit<Causes, "causes"> & { readonly causes: readonly LikelyCause[] }) | null;
  /** Every part of the reel of which something is known, likeliest failed first. */
  readonly chances: readonly PartChance[];
  /** Positions to open first. */
  readonly look_at: readonly string[];
  readonly pull: PartsToPull;
}

/** A part is worth having ready from this chance on, and so many are told. */
const WORTH = 0.1, MOST = 7;

function lookAt(causes: readonly LikelyCause[], chances: readonly PartChance[]): string[] {
  const by_cause = causes.filter(({ here }) => here >= WORTH).flatMap(({ positions }) => positions);
  const by_wear = chances.filter(({ chance }) => chance >= WORTH).map(({ position }) => position);
  return [...new Set([...by_cause, ...by_wear])].slice(0, MOST);
}

/**
 * Where to look first on this reel, and what to have ready.
 *
 * @param lines the stock advice, for shelf and delivery
 * @throws {RangeError} if a number of days or months is negative
 * @throws the signal's reason when called off
 */
export async function reelCard(engine: Engine, reel: ReelOnBench, { usual, complaints }: TradeLists, lines: readonly RestockLine[], ask: WearAsk = {}): Promise<ReelCard> {
  const { signal } = ask, { reel_kind, maker, model, water, rinse, days, months, complaint } = reel;
  for (const [name, value] of [["days", days], ["months", months]] as const) if (value !== null && !(value >= 0)) throw new RangeError(`reelCard: ${name} must be 0 or more, got ${value}`);
  const rates = await failureRates(engine, { ...ALL_FAILURES, ...EVERYTHING, reel_kind, opening: "planned" }, signal);
  const worn: readonly FailedByNow[] = days === null && months === null ? []
    : await wornByNow(engine, { reel_kind, maker, model, water, rinse, risk: 0.1 }, { days, months }, ask);
  const chances = partChances(rates, worn, { maker, model });
  const faults = complaint === null ? [] : await engine.rows<ComplaintFaults>(complaintFaultsSql, { reel_kind }, signal);
  const found = complaint === null ? null : causesOf(complaint, reel_kind, usual, faults, complaints);
  const causes = found && { ...found, causes: likelyCauses(found, chances) }, look_at = lookAt(causes?.causes ?? [], chances);
  const fitted = model === null ? [] : await engine.rows<FittedPart>(fittedPartsSql, { maker, model }, signal);
  return { reel, causes, chances, look_at, pull: partsToPull(look_at, fitted, lines) };
}
