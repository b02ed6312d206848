import type { Engine } from "../../db/engine.ts";
import placesSql from "../failures/places.sql?raw";
import { filterValues } from "../filter.ts";
import type { WorkMeans } from "../worker-work.ts";
import { followParts } from "./follow-parts.ts";
import gradesSql from "./grades.sql?raw";
import placeOfSql from "./place-of.sql?raw";
import linesSql from "./lines.sql?raw";
import linkedSql from "./linked.sql?raw";
import type { WearFilter } from "./wear.ts";

/** Parts alike: good at exposure `low`, failed by `high` (null: never seen to fail); conditions are null where not asked for. */
export type WearLine = {
  readonly position: string;
  readonly low: number;
  readonly high: number | null;
  readonly rinse: string | null;
  readonly water: string | null;
  readonly tier: string | null;
  readonly sealed: boolean | null;
  readonly maker: string | null;
  readonly model: string | null;
  /** Why these parts say nothing of the life, null where they do. */
  readonly left_out: "chosen by fault" | "no exposure" | "clock missing" | null;
  readonly parts: number;
  readonly linked: number;
  readonly mates: number;
};
export type GradeRow = { readonly exposure: number; readonly grade: number; readonly written: boolean; readonly sights: number };
export type PlaceName = { readonly position: string; readonly name: string; readonly group_code: string | null; readonly group_name: string | null; readonly family: string | null };

/** What the answers on wear are made from: plain rows, so that a worker can be sent them. */
export interface WearRecords {
  readonly filter: WearFilter;
  readonly lines: readonly WearLine[];
  readonly places: readonly PlaceName[];
  readonly visits: number;
  readonly linked_visits: number;
  readonly contradicting_months: number;
}
/** The same of one position, with the conditions of every part, under all ways of counting first sights, and its grades. */
export interface PageRecords extends WearRecords { readonly position: string; readonly other_ways: readonly WearRecords[]; readonly grades: readonly GradeRow[] }

/** `models`: the model of every part too; as `conditions` unless said. */
export interface Asked { readonly position: string | null; readonly conditions: boolean; readonly models?: boolean }
const ALL_PLAIN: Asked = { position: null, conditions: false };

/** Everything of all positions, in salt days. */
export const ALL_WEAR: WearFilter = { reel_kind: null, maker: null, model: null, water: null, from: null, to: null, clock: "salt_days", first_sights: "planned" };

/** All positions or one; with the conditions of every part there are many more rows. */
export async function wearRecords(engine: Engine, filter: WearFilter, { position, conditions, models = conditions }: Asked = ALL_PLAIN, means: WorkMeans = {}): Promise<WearRecords> {
  const { signal } = means, values = { ...filterValues(filter), clock: filter.clock, first_sights: filter.first_sights, position, conditions, models };
  await followParts(engine, means);
  const lines = await engine.rows<WearLine>(linesSql, values, signal), places = await engine.rows<PlaceName>(placesSql, {}, signal);
  const [about] = await engine.rows<{ visits: number; linked: number; contradicting: number }>(linkedSql, {}, signal);
  return { filter, lines, places, visits: about?.visits ?? 0, linked_visits: about?.linked ?? 0, contradicting_months: about?.contradicting ?? 0 };
}

/** What the page of one position needs. */
export async function pageRecords(engine: Engine, filter: WearFilter, position: string, means: WorkMeans = {}): Promise<PageRecords> {
  const { first_sights, ...plain } = filter, asked = { position, conditions: true }, records = await wearRecords(engine, filter, asked, means), other_ways: WearRecords[] = [];
  for (const way of (["planned", "all", "none"] as const).filter((one) => one !== first_sights)) {
    other_ways.push(await wearRecords(engine, { ...plain, first_sights: way }, asked, means));
  }
  const [numbered] = await engine.rows<{ place: number }>(placeOfSql, { position }, means.signal);
  const grades = await engine.rows<GradeRow>(gradesSql, { ...filterValues(filter), clock: filter.clock, place: numbered?.place ?? null }, means.signal);
  return { ...records, position, other_ways, grades };
}
