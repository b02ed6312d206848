import type { Engine } from "../../db/engine.ts";
import { recordsSpan } from "../choices/choices.ts";
import type { RecordsSpan } from "../choices/choices.ts";
import { restock } from "../stock/restock.ts";
import type { Restock } from "../stock/restock.ts";
import type { RestockLine, RestockSettings } from "../stock/restock-line.ts";

/** A part that open jobs wait for. */
export interface WaitingPart {
  readonly interchange: string;
  readonly name: string | null;
  readonly pieces: number;
  readonly on_hand: number | null;
}

/** What to order today, and the records it is drawn from. */
export interface OrderToday {
  readonly as_of: string;
  readonly span: RecordsSpan;
  readonly restock: Restock;
  /** Parts that open jobs wait for, most pieces first. */
  readonly waiting: readonly WaitingPart[];
}

export type OrderSettings = Partial<RestockSettings> & Pick<RestockSettings, "as_of">;

function waitingParts(lines: readonly RestockLine[]): WaitingPart[] {
  return lines
    .filter((line) => line.waiting > 0)
    .map(({ interchange, name, waiting, on_hand }) => ({ interchange, name, pieces: waiting, on_hand }))
    .sort((a, b) => b.pieces - a.pieces || (a.interchange < b.interchange ? -1 : 1));
}

/**
 * The part of the morning sheet that stands first on the screen.
 *
 * @throws {RangeError} when `as_of` is not a day
 */
export async function orderToday(engine: Engine, settings: OrderSettings, signal?: AbortSignal): Promise<OrderToday> {
  const [span, order] = await Promise.all([recordsSpan(engine, signal), restock(engine, settings, signal)]);
  return { as_of: settings.as_of, span, restock: order, waiting: waitingParts(order.lines) };
}
