import { compareShares } from "../../stats/compare-shares.ts";
import { falseDiscovery } from "../../stats/false-discovery.ts";
import { shareInterval } from "../../stats/share-interval.ts";
import { FEWEST_FOR_SHARE } from "../failures/failure-values.ts";
import { sideOf } from "../failures/verdict.ts";
import type { Figure, Verdict } from "../failures/verdict.ts";
import type { Opening } from "../filter.ts";
import type { Elsewhere, ElsewhereRow } from "./elsewhere.ts";

/** One part of a model, here and at other shops. */
export interface BesideElsewhere {
  readonly position: string;
  readonly position_name: string;
  readonly failed: number;
  readonly inspected: number;
  readonly rate: Figure;
  readonly elsewhere_failed: number;
  readonly elsewhere_inspected: number;
  readonly elsewhere_rate: Figure;
  readonly shops: number;
  readonly word: "more often here" | "less often here" | "no clear difference" | "too few";
}

/** Of all parts of a model looked at together, one in twenty differences named may be chance. */
const SURE = 0.05;

/** A share with its limits; null under ten. */
function figure(failed: number, inspected: number): Figure {
  const [low, high] = shareInterval(failed, inspected);
  return { value: inspected < FEWEST_FOR_SHARE ? null : failed / inspected, low, high };
}

function word(row: Omit<BesideElsewhere, "word">, q: number | null): BesideElsewhere["word"] {
  if (row.rate.value === null || row.elsewhere_rate.value === null) return "too few";
  if (q === null || q >= SURE) return "no clear difference";
  return row.rate.value > row.elsewhere_rate.value ? "more often here" : "less often here";
}

const same = (a: string | null, b: string | null) => (a ?? "").trim().toLowerCase() === (b ?? "").trim().toLowerCase();

/**
 * The parts of one model beside what other shops counted, as counted: their waters and owners may be others.
 *
 * @param verdicts of one model
 * @returns parts inspected here and elsewhere, in the order of the verdicts
 */
export function besideElsewhere(verdicts: readonly Verdict[], { rows }: Elsewhere, opening: Opening): BesideElsewhere[] {
  const [first] = verdicts;
  if (!first) return [];
  const there = new Map<string, ElsewhereRow>(rows.filter((row) => row.opening === opening && same(row.model, first.model) && same(row.maker, first.maker)).map((row) => [row.position, row]));
  const found = verdicts.flatMap((verdict): Omit<BesideElsewhere, "word">[] => {
    const { failed, inspected } = sideOf(verdict, opening), other = there.get(verdict.position);
    if (!other || inspected === 0 || other.inspected === 0) return [];
    return [{
      position: verdict.position, position_name: verdict.position_name, failed, inspected, rate: figure(failed, inspected),
      elsewhere_failed: other.failed, elsewhere_inspected: other.inspected, elsewhere_rate: figure(other.failed, other.inspected), shops: other.shops,
    }];
  });
  const q = falseDiscovery(found.map((row) => compareShares(row, { failed: row.elsewhere_failed, inspected: row.elsewhere_inspected }).pMid));
  return found.map((row, at) => ({ ...row, word: word(row, q[at] ?? null) }));
}
