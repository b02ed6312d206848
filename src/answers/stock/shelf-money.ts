import { demandQuantile } from "../../stats/negative-binomial.ts";
import { predictiveDemand } from "../../stats/gamma-poisson.ts";
import { grouped } from "../grouped.ts";
import { money, number, pieces } from "../wording.ts";
import { LONG_COVER_YEARS } from "./reason.ts";
import type { RestockLine } from "./restock-line.ts";

/** Days that dead stock is given to be used after all. */
const TWO_YEARS = 730.5;

/** A line whose shelf lasts for years, or that nothing used. */
export interface DeadLine {
  readonly line: RestockLine;
  /** What its shelf cost; null without a price. */
  readonly value: number | null;
  /** Chance that at least one is used within two years. */
  readonly chance_used: number;
  /** Pieces that two years will not take, with 95 % chance, and what they cost. */
  readonly spare: number;
  readonly spare_value: number | null;
  readonly sentence: string;
}

/** Money in drawers. */
export interface ShelfMoney {
  /** Cost of what lies on the shelf, of the lines that are counted and have a price. */
  readonly value: number;
  readonly lines: number;
  readonly uncounted: number;
  readonly unpriced: number;
  readonly families: readonly { readonly family: string | null; readonly value: number; readonly lines: number }[];
  /** Dearest first, those without a price last. */
  readonly dead: readonly DeadLine[];
  readonly dead_value: number;
  readonly spare_value: number;
}

/** What the shelf of a line cost; null where count or price is unknown. */
export const shelfValue = ({ on_hand, unit_cost }: RestockLine): number | null => (on_hand === null || unit_cost === null ? null : money(on_hand * unit_cost));

const asleep = (line: RestockLine): boolean =>
  line.status !== "refused" && (line.on_hand ?? 0) > 0 && (line.used === 0 || (line.cover_years !== null && line.cover_years >= LONG_COVER_YEARS));

function deadLine(line: RestockLine): DeadLine {
  const { shape, rate } = line.belief, on_hand = line.on_hand ?? 0, enough = demandQuantile(0.95, predictiveDemand({ shape, rate }, TWO_YEARS));
  const spare = Math.max(0, on_hand - enough), chance_used = -Math.expm1(shape * Math.log(rate / (rate + TWO_YEARS)));
  const spare_value = line.unit_cost === null ? null : money(spare * line.unit_cost);
  const lasts = line.cover_years === null ? `none used in ${pieces(Math.round(line.months), "month")}` : `enough for about ${number(line.cover_years)} years`;
  const chance = Math.max(1, Math.min(99, Math.round(chance_used * 100)));
  const sell = spare === 0 ? "" : ` ${number(spare)} of them could go: two years will hardly take more than ${number(enough)}.`;
  return {
    line, value: shelfValue(line), chance_used, spare, spare_value,
    sentence: `${number(on_hand)} on the shelf, ${lasts}; the chance that one is used within two years is about ${chance} in 100.${sell}`,
  };
}

const sum = (values: readonly (number | null)[]): number => money(values.reduce<number>((total, value) => total + (value ?? 0), 0));

/** What lies on the shelf, where, and what of it is dead. */
export function shelfMoney(lines: readonly RestockLine[]): ShelfMoney {
  const counted = lines.filter((line) => line.part_no !== null), dead = counted.filter(asleep).map(deadLine);
  const known = counted.filter((line) => shelfValue(line) !== null && (line.on_hand ?? 0) > 0);
  return {
    value: sum(known.map(shelfValue)), lines: known.length,
    uncounted: counted.filter((line) => line.on_hand === null).length, unpriced: counted.filter((line) => (line.on_hand ?? 0) > 0 && line.unit_cost === null).length,
    families: [...grouped(known, (line) => line.family)].map(([family, some]) => ({ family, value: sum(some.map(shelfValue)), lines: some.length }))
      .sort((a, b) => b.value - a.value || ((a.family ?? "") < (b.family ?? "") ? -1 : 1)),
    dead: dead.sort((a, b) => (b.value ?? -1) - (a.value ?? -1) || (a.line.interchange < b.line.interchange ? -1 : 1)),
    dead_value: sum(dead.map((one) => one.value)), spare_value: sum(dead.map((one) => one.spare_value)),
  };
}
