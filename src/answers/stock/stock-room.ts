import type { Engine } from "../../db/engine.ts";
import { dayAfter } from "../days.ts";
import { demandByGroup } from "../demand/demand-by-group.ts";
import type { GroupDemand } from "../demand/demand-by-group.ts";
import { EVERYTHING } from "../filter.ts";
import type { HandGroup } from "../interchange/hand-groups.ts";
import { sizeQuestions } from "../interchange/interchange-groups.ts";
import type { PartIdentity, SizeQuestion } from "../interchange/interchange-groups.ts";
import partsSql from "../interchange/parts.sql?raw";
import { askLastBuys } from "./last-buy.ts";
import type { LastBuy } from "./last-buy.ts";
import { restock } from "./restock.ts";
import type { Restock } from "./restock.ts";
import type { RestockLine, RestockSettings } from "./restock-line.ts";
import { shelfMoney } from "./shelf-money.ts";
import type { ShelfMoney } from "./shelf-money.ts";
import { suppliers } from "./suppliers.ts";
import type { SupplierFacts } from "./suppliers.ts";

/** A part that several models take. */
export interface SharedPart {
  readonly line: RestockLine;
  readonly demand: GroupDemand;
}

/** The order of the week and all that stands beside it; the morning sheet asks `restock` alone. */
export interface StockRoom extends Restock {
  readonly suppliers: readonly SupplierFacts[];
  readonly money: ShelfMoney;
  readonly last_buys: readonly LastBuy[];
  /** Parts of the last two years that two models or more take, most models first. */
  readonly shared: readonly SharedPart[];
  readonly size_questions: readonly SizeQuestion[];
}

function sharedParts(lines: readonly RestockLine[], groups: readonly GroupDemand[]): SharedPart[] {
  const known = new Map(lines.map((line) => [line.interchange, line]));
  return groups.flatMap((demand) => {
    const line = known.get(demand.interchange);
    return line === undefined || line.status === "refused" || demand.models < 2 ? [] : [{ line, demand }];
  }).sort((a, b) => b.demand.models - a.demand.models || b.demand.pieces - a.demand.pieces || (a.line.interchange < b.line.interchange ? -1 : 1));
}

/**
 * Everything the Stock room shows but the budget and the replay.
 *
 * @param hand what the owner settled about groups and sizes
 * @throws {RangeError} as `restock`
 */
export async function stockRoom(
  engine: Engine, given: Partial<RestockSettings> & Pick<RestockSettings, "as_of">, hand: readonly HandGroup[], signal?: AbortSignal,
): Promise<StockRoom> {
  const order = await restock(engine, given, signal), { as_of } = given;
  const [facts, last_buys, demand, parts] = await Promise.all([
    suppliers(engine, order.settings, signal), askLastBuys(engine, as_of, order.lines, signal),
    demandByGroup(engine, { ...EVERYTHING, from: dayAfter(as_of, -730), to: as_of }, signal), engine.rows<PartIdentity>(partsSql, {}, signal),
  ]);
  return { ...order, suppliers: facts, money: shelfMoney(order.lines), last_buys, shared: sharedParts(order.lines, demand.groups), size_questions: sizeQuestions(parts, hand) };
}
