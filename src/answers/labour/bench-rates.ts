import { saidInText } from "../wording.ts";

/** What an hour at the bench is meant to bring in and what it costs, in the shop's own money; null where the owner has not said. */
export interface BenchRates {
  /** Charged for an hour at the bench. */
  readonly hour_price: number | null;
  /** Wages and the shop around it, for an hour at the bench. */
  readonly hour_cost: number | null;
  /** Minutes a ticket takes beside the bench: counter, telephone, trying out, packing. */
  readonly beside_min: number | null;
}

export const NO_RATES: BenchRates = { hour_price: null, hour_cost: null, beside_min: null };

/** Name of the ledger's setting that keeps the rates, as JSON. */
export const BENCH_RATES_SETTING = "bench rates";

const MOST = { hour_price: 100_000, hour_cost: 100_000, beside_min: 480 } as const;

/**
 * The rates as they were kept; one that cannot be read counts as not said, and is named.
 *
 * @param kept the ledger's setting, null when nothing was kept yet
 */
export function readBenchRates(kept: string | null): { rates: BenchRates; faults: readonly string[] } {
  if (kept === null || kept === "") return { rates: NO_RATES, faults: [] };
  let found: unknown;
  try {
    found = JSON.parse(kept);
  } catch {
    return { rates: NO_RATES, faults: [`The rates of the bench cannot be read: what is kept is damaged.`] };
  }
  if (typeof found !== "object" || found === null || Array.isArray(found)) return { rates: NO_RATES, faults: ["The rates of the bench cannot be read: they are not rates."] };
  const given = found as Record<string, unknown>, faults: string[] = [];
  const one = (name: keyof BenchRates): number | null => {
    const value = given[name] ?? null;
    if (value === null || (typeof value === "number" && value >= 0 && value <= MOST[name])) return value;
    faults.push(`A rate of the bench was left out: ${name} is ${saidInText(value)}.`);
    return null;
  };
  return { rates: { hour_price: one("hour_price"), hour_cost: one("hour_cost"), beside_min: one("beside_min") }, faults };
}

/**
 * The rates as text for the ledger's setting.
 *
 * @throws {RangeError} if one is negative, no number, or beyond belief
 */
export function benchRatesText(rates: BenchRates): string {
  const text = JSON.stringify(rates), { faults } = readBenchRates(text);
  if (faults[0] !== undefined) throw new RangeError(`benchRatesText: ${faults[0]}`);
  return text;
}
