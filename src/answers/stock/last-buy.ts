import type { Engine } from "../../db/engine.ts";
import { demandQuantile } from "../../stats/negative-binomial.ts";
import { dayAfter } from "../days.ts";
import { number, pieces } from "../wording.ts";
import endedModelsSql from "./ended-models.sql?raw";
import { toBuy } from "./plug-in-level.ts";
import type { RestockLine } from "./restock-line.ts";

/** Use of one group by one model that is no longer made, in the last two years. */
export type EndedUse = {
  readonly maker: string | null;
  readonly model: string;
  readonly discontinued_on: string;
  readonly tickets_now: number;
  readonly tickets_before: number;
  readonly interchange: string;
  readonly pieces: number;
  readonly all_pieces: number;
};

/** A part to buy for the last time. */
export interface LastBuy {
  readonly line: RestockLine;
  readonly model: string;
  readonly discontinued_on: string;
  /** Years it is to last, pieces expected in them, and pieces that are enough with the target chance. */
  readonly years: number;
  readonly expected: number;
  readonly level: number;
  readonly qty: number | null;
  readonly sentence: string;
}

const YEARS = 5;
/** A part is the model's own when it takes at least this share of it: others keep it on sale. */
const OWN_SHARE = 0.8;
/** Reels of an ended model are believed to become fewer by what two years show, drawn toward a slow decline and never to grow. */
const SHOWN = 5, SLOW = 0.9;

/** Share of a year's reels that the year after brings. */
function decline({ tickets_now, tickets_before }: EndedUse): number {
  return Math.min(1, (tickets_now + SHOWN * SLOW) / (tickets_before + SHOWN));
}

/** Pieces the model's part takes in the years after: each year's use times the decline, the doubt of its few uses in it. */
function lastBuy(use: EndedUse, line: RestockLine): LastBuy {
  const yearly = use.pieces / 2, left = decline(use), times = Array.from({ length: YEARS }, (_, year) => left ** (year + 1)).reduce((sum, one) => sum + one, 0);
  const shape = use.pieces + 0.5, expected = (shape / 2) * times, level = demandQuantile(line.target, { mean: expected, size: shape });
  const { on_hand, on_order, waiting, pack_qty, min_order_qty } = line;
  const qty = on_hand === null ? null : toBuy(level, { on_hand, on_order, waiting, pack_qty, min_order_qty });
  const buy = qty === null ? "count the shelf first" : qty === 0 ? "that is enough" : `buy ${number(qty)} while it can be had`;
  return {
    line, model: use.model, discontinued_on: use.discontinued_on, years: YEARS, expected, level, qty,
    sentence: `The ${use.model} is not made since ${use.discontinued_on}; ${pieces(use.tickets_now, "reel")} came in the last year, ${number(use.tickets_before)} the year before. `
      + `It took about ${number(yearly)} a year; ${YEARS} years may take ${number(level)}; ${on_hand === null ? "the shelf is not counted" : `${number(on_hand + on_order)} on the shelf or under way`}: ${buy}.`,
  };
}

/** What to buy for the last time, of parts that hardly anything but an ended model takes; most pieces first. */
export function lastBuys(uses: readonly EndedUse[], lines: readonly RestockLine[]): LastBuy[] {
  const known = new Map(lines.map((line) => [line.interchange, line]));
  return uses.flatMap((use) => {
    const line = known.get(use.interchange);
    return line === undefined || line.part_no === null || line.status === "refused" || use.pieces < OWN_SHARE * use.all_pieces ? [] : [lastBuy(use, line)];
  }).sort((a, b) => (b.qty ?? -1) - (a.qty ?? -1) || (a.line.interchange < b.line.interchange ? -1 : 1));
}

/** The same, asked of the records. */
export async function askLastBuys(engine: Engine, as_of: string, lines: readonly RestockLine[], signal?: AbortSignal): Promise<LastBuy[]> {
  return lastBuys(await engine.rows<EndedUse>(endedModelsSql, { as_of, from_date: dayAfter(as_of, -730), recent_from: dayAfter(as_of, -365) }, signal), lines);
}
