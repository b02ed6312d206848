import { isDay } from "../days.ts";
import { OPENINGS } from "../filter.ts";
import type { Opening } from "../filter.ts";
import type { RollUpRow } from "./roll-up.ts";

/** What other shops saw of a part on a model, all of them together. */
export interface ElsewhereRow {
  readonly position: string;
  readonly maker: string | null;
  readonly model: string;
  readonly opening: Opening;
  readonly inspected: number;
  readonly failed: number;
  /** Shops that inspected it. */
  readonly shops: number;
}

/** What was taken from a roll-up of other shops. */
export interface Elsewhere {
  /** Day it was taken in, `YYYY-MM-DD`. */
  readonly taken_on: string;
  readonly shops: number;
  readonly rows: readonly ElsewhereRow[];
}

/** Name of the ledger's setting that keeps it, as JSON. */
export const ELSEWHERE_SETTING = "other shops";

/** Ways of coming in that a condition's number belongs to: from 256 on planned, from 512 on with something wrong. */
const openingsOf = (condition: number): readonly Opening[] => (condition >= 512 ? ["*", "complaint"] : condition >= 256 ? ["*", "planned"] : ["*"]);

/** All shops together, by part, model and way of coming in. */
export function elsewhereOf(rows: readonly RollUpRow[], taken_on: string): Elsewhere {
  const sums = new Map<string, { of: Omit<ElsewhereRow, "inspected" | "failed" | "shops">; inspected: number; failed: number; shops: Set<number> }>();
  for (const { shop, position, maker, model, condition, inspected, failed } of rows) {
    for (const opening of openingsOf(condition)) {
      const key = JSON.stringify([position, maker, model, opening]), sum = sums.get(key) ?? { of: { position, maker, model, opening }, inspected: 0, failed: 0, shops: new Set() };
      sum.inspected += inspected;
      sum.failed += failed;
      sum.shops.add(shop);
      sums.set(key, sum);
    }
  }
  return {
    taken_on, shops: new Set(rows.map(({ shop }) => shop)).size,
    rows: [...sums.values()].map(({ of, inspected, failed, shops }) => ({ ...of, inspected, failed, shops: shops.size })),
  };
}

/** As text for the ledger's setting: a row in seven cells, for there are thousands. */
export const elsewhereText = ({ taken_on, shops, rows }: Elsewhere): string =>
  JSON.stringify({ taken_on, shops, rows: rows.map(({ position, maker, model, opening, inspected, failed, shops: seen_by }) => [position, maker, model, opening, inspected, failed, seen_by]) });

const whole = (value: unknown): value is number => typeof value === "number" && Number.isInteger(value) && value >= 0;

function rowOf(cells: unknown): ElsewhereRow | null {
  if (!Array.isArray(cells) || cells.length !== 7) return null;
  const [position, maker, model, opening, inspected, failed, shops] = cells as unknown[], came = OPENINGS.find((one) => one === opening);
  if (typeof position !== "string" || (maker !== null && typeof maker !== "string") || typeof model !== "string" || !came) return null;
  return whole(inspected) && whole(failed) && failed <= inspected && whole(shops) ? { position, maker, model, opening: came, inspected, failed, shops } : null;
}

const UNREAD = "What was taken in from other shops cannot be read and is left out; take their roll-up in again.";

/** What was kept, whole or not at all, with a sentence when it cannot be read. */
export function readElsewhere(kept: string | null): { elsewhere: Elsewhere | null; faults: readonly string[] } {
  if (kept === null) return { elsewhere: null, faults: [] };
  try {
    const { taken_on, shops, rows } = JSON.parse(kept) as Record<string, unknown>, read = Array.isArray(rows) ? rows.map(rowOf) : [null];
    if (typeof taken_on !== "string" || !isDay(taken_on) || !whole(shops) || read.includes(null)) return { elsewhere: null, faults: [UNREAD] };
    return { elsewhere: { taken_on, shops, rows: read.filter((row) => row !== null) }, faults: [] };
  } catch (error) {
    if (!(error instanceof SyntaxError || error instanceof TypeError)) throw error;
    return { elsewhere: null, faults: [UNREAD] };
  }
}
