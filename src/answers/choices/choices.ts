import type { Engine } from "../../db/engine.ts";
import filterValuesSql from "./filter-values.sql?raw";
import modelsSql from "./models.sql?raw";
import positionsSql from "./positions.sql?raw";
import spanSql from "./span.sql?raw";

/** One value a filter can take, with the tickets behind it. */
export interface Choice {
  readonly value: string;
  readonly tickets: number;
}

export type ModelChoice = {
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  readonly tickets: number;
};

export type PositionChoice = {
  readonly position: string;
  readonly name: string;
  readonly group_code: string | null;
  readonly group_name: string | null;
};

/** What the records hold to choose from, most frequent first; positions in the order of the position list. */
export interface Choices {
  readonly reel_kinds: readonly Choice[];
  readonly makers: readonly Choice[];
  readonly models: readonly ModelChoice[];
  readonly waters: readonly Choice[];
  readonly groups: readonly { readonly group_code: string; readonly group_name: string }[];
  readonly positions: readonly PositionChoice[];
}

/** First and last day a reel came in, and how much there is; the days are null while there is no ticket. */
export interface RecordsSpan {
  readonly from: string | null;
  readonly to: string | null;
  /** Newest day written anywhere; a job done or an order moved more than 60 days after the reel (or the newest reel) came in is taken for a slip. */
  readonly latest: string | null;
  readonly tickets: number;
  readonly findings: number;
  readonly models: number;
  readonly parts: number;
  readonly orders: number;
  /** Tickets not finished: still at the bench or waiting. */
  readonly open_tickets: number;
  readonly tickets_with_serial: number;
}

type ValueRow = { what: string; value: string; tickets: number };
type SpanRow = Omit<RecordsSpan, "from" | "to"> & { from_date: string | null; to_date: string | null };

/** Everything a filter can be set to. */
export async function choices(engine: Engine, signal?: AbortSignal): Promise<Choices> {
  const [values, models, positions] = await Promise.all([
    engine.rows<ValueRow>(filterValuesSql, {}, signal),
    engine.rows<ModelChoice>(modelsSql, {}, signal),
    engine.rows<PositionChoice>(positionsSql, {}, signal),
  ]);
  const of = (what: string) => values.filter((row) => row.what === what).map(({ value, tickets }) => ({ value, tickets }));
  const groups = new Map(positions.flatMap(({ group_code, group_name }) => (group_code ? [[group_code, group_name ?? group_code]] : [])));
  return {
    reel_kinds: of("reel_kind"),
    makers: of("maker"),
    models,
    waters: of("water"),
    groups: [...groups].map(([group_code, group_name]) => ({ group_code, group_name })),
    positions,
  };
}

/** How far the records reach. */
export async function recordsSpan(engine: Engine, signal?: AbortSignal): Promise<RecordsSpan> {
  const [row] = await engine.rows<SpanRow>(spanSql, {}, signal);
  if (!row) throw new RangeError("recordsSpan: needs one row from span.sql, got none");
  const { from_date, to_date, ...counts } = row;
  return { from: from_date, to: to_date, ...counts };
}
