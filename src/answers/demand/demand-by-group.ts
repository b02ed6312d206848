import type { Engine } from "../../db/engine.ts";
import { recordsSpan } from "../choices/choices.ts";
import { daysFrom, MONTH_DAYS } from "../days.ts";
import { filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import { grouped } from "../grouped.ts";
import byGroupSql from "./by-group.sql?raw";
import byMonthSql from "./by-month.sql?raw";
import partNumbersSql from "./part-numbers.sql?raw";
import unmappedSql from "./unmapped.sql?raw";

/** Pieces of one interchange group in one month (`month` is its first day); months without use are there with 0. */
export type DemandMonth = {
  readonly interchange: string;
  readonly month: string;
  readonly replaced: number;
  readonly wanted: number;
};

/** Use of one interchange group over the period looked at. */
export interface GroupDemand {
  readonly interchange: string;
  readonly part_nos: readonly string[];
  readonly pieces: number;
  readonly replaced: number;
  readonly wanted: number;
  readonly routine: number;
  readonly tickets: number;
  readonly models: number;
  /** The model that takes most of the group's pieces, and its share of them, 0…1. */
  readonly top_model: string;
  readonly top_model_share: number;
  readonly per_month: number;
  readonly first_on: string;
  readonly last_on: string;
}

/** Parts replaced or wanted at a position without a part number that could be told. */
export type UnmappedDemand = {
  readonly position: string;
  readonly name: string;
  readonly pieces: number;
  readonly tickets: number;
};

export interface Demand {
  readonly from: string | null;
  readonly to: string | null;
  /** Months of records looked at, months without use included. */
  readonly months: number;
  readonly groups: readonly GroupDemand[];
  /** Counted here, in no group. */
  readonly unmapped: readonly UnmappedDemand[];
  readonly unmapped_pieces: number;
}

type GroupRow = {
  interchange: string; pieces: number; replaced: number; wanted: number; routine: number; tickets: number; models: number;
  top_model: string; top_pieces: number; first_on: string; last_on: string;
};

/** The days both in the filter and in the records. */
function period(filter: RecordsFilter, from: string | null, to: string | null): { from: string; to: string } | null {
  if (from === null || to === null) return null;
  const start = filter.from !== null && filter.from > from ? filter.from : from, end = filter.to !== null && filter.to < to ? filter.to : to;
  return start <= end ? { from: start, to: end } : null;
}

function ofGroup({ top_pieces, ...row }: GroupRow, part_nos: readonly string[], months: number): GroupDemand {
  return { ...row, part_nos, top_model_share: top_pieces / row.pieces, per_month: row.pieces / months };
}

/** Use of every interchange group, most used first. */
export async function demandByGroup(engine: Engine, filter: RecordsFilter, signal?: AbortSignal): Promise<Demand> {
  const values = filterValues(filter);
  const [span, groups, numbers, unmapped] = await Promise.all([
    recordsSpan(engine, signal),
    engine.rows<GroupRow>(byGroupSql, values, signal),
    engine.rows<{ interchange: string; part_no: string }>(partNumbersSql, {}, signal),
    engine.rows<UnmappedDemand>(unmappedSql, values, signal),
  ]);
  const days = period(filter, span.from, span.to), months = days ? (daysFrom(days.from, days.to) + 1) / MONTH_DAYS : 0;
  const named = grouped(numbers, (row) => row.interchange);
  return {
    from: days?.from ?? null, to: days?.to ?? null, months,
    groups: groups.map((row) => ofGroup(row, (named.get(row.interchange) ?? []).map(({ part_no }) => part_no), months)),
    unmapped, unmapped_pieces: unmapped.reduce((sum, row) => sum + row.pieces, 0),
  };
}

/** Month by month, for one group, or for every group with `interchange: null`. */
export async function demandByMonth(
  engine: Engine,
  filter: RecordsFilter & { readonly interchange: string | null },
  signal?: AbortSignal,
): Promise<readonly DemandMonth[]> {
  return engine.rows<DemandMonth>(byMonthSql, { interchange: filter.interchange, ...filterValues(filter) }, signal);
}
