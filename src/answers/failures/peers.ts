import type { Stratum } from "../../stats/mantel-haenszel.ts";
import type { Opening } from "../filter.ts";
import { grouped } from "../grouped.ts";

/** One cell of `conditions.sql`. */
export type ConditionRow = {
  readonly position: string;
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  /** Conditions as one number; from 256 on planned, from 512 on with something wrong, below that unknown. */
  readonly condition: number;
  readonly season: number;
  /** 0 in one's own records; where several shops are pooled, which of them. */
  readonly shop: number;
  readonly inspected: number;
  readonly failed: number;
};

export interface Counts { inspected: number; failed: number }
/** By condition + 1024 × shop: only what one shop saw under the same conditions is alike. */
export type ByCondition = Map<number, Counts>;
export type BySeason = ReadonlyMap<number, ByCondition>;

/** One model, or all sizes of one, at one position. */
export interface Peer {
  readonly key: string;
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  readonly series: boolean;
  /** Keys of the models it is made of. */
  readonly members: readonly string[];
  readonly names: readonly string[];
  readonly conditions: ByCondition;
  readonly seasons: BySeason;
}

/** All models of one position, and their series. */
export interface Field {
  readonly position: string;
  readonly models: readonly Peer[];
  readonly series: readonly Peer[];
  readonly total: ByCondition;
  readonly seasons: BySeason;
}

const RANGES: Readonly<Record<Opening, readonly [number, number]>> = { "*": [0, Infinity], planned: [256, 512], complaint: [512, Infinity] };
/** A shop's number counts so much in the key of a condition. */
const SHOP = 1024;
const within = (key: number, [from, to]: readonly [number, number]) => key % SHOP >= from && key % SHOP < to;
const modelKey = ({ maker, model }: { maker: string | null; model: string }) => JSON.stringify([maker, model]);

function added(to: ByCondition, condition: number, { inspected, failed }: Counts): void {
  const counts = to.get(condition);
  if (counts) {
    counts.inspected += inspected;
    counts.failed += failed;
  } else to.set(condition, { inspected, failed });
}

/** The rows as conditions, all seasons together and each by itself. */
function conditionsOf(rows: readonly ConditionRow[]): { conditions: ByCondition; seasons: BySeason } {
  const conditions: ByCondition = new Map(), seasons = new Map<number, ByCondition>();
  for (const row of rows) {
    const season = seasons.get(row.season) ?? new Map<number, Counts>();
    seasons.set(row.season, season);
    const key = row.condition + SHOP * row.shop;
    added(conditions, key, row);
    added(season, key, row);
  }
  return { conditions, seasons };
}

/**
 * What the sizes of a model are called together: its name up to the first figure.
 *
 * @example
 * seriesName("Ekholt 30"); // => "Ekholt"
 */
export function seriesName(model: string): string {
  return (/^[^0-9]*/.exec(model)?.[0] ?? "").trim();
}

function sizes(models: readonly Peer[], rows: ReadonlyMap<string, readonly ConditionRow[]>): Peer[] {
  const families = grouped(models, ({ maker, model }) => JSON.stringify([maker, seriesName(model)]));
  return [...families.values()].flatMap((members) => {
    const [first] = members, name = seriesName(first?.model ?? "");
    if (!first || members.length < 2 || name === "" || first.maker === null) return [];
    const key = `${modelKey({ maker: first.maker, model: name })} all sizes`;
    return [{ ...first, key, model: name, series: true, members: members.map((one) => one.key), names: members.map((one) => one.model), ...conditionsOf(members.flatMap((one) => rows.get(one.key) ?? [])) }];
  });
}

/** The rows of one position as models, their series, and all together. */
export function fieldOf(position: string, rows: readonly ConditionRow[]): Field {
  const by_model = grouped(rows, modelKey), { conditions: total, seasons } = conditionsOf(rows);
  const models = [...by_model].map(([key, own]): Peer => {
    const { maker, model, reel_kind } = own[0] as ConditionRow;
    return { key, maker, model, reel_kind, series: false, members: [key], names: [model], ...conditionsOf(own) };
  });
  return { position, models, series: sizes(models, by_model), total, seasons };
}

/** Counts over all conditions of one way of coming in. */
export function countsOf(conditions: ByCondition, opening: Opening): Counts {
  const range = RANGES[opening], sum = { inspected: 0, failed: 0 };
  for (const [condition, { inspected, failed }] of conditions) {
    if (!within(condition, range)) continue;
    sum.inspected += inspected;
    sum.failed += failed;
  }
  return sum;
}

/** Models that are not among the others of a peer: itself, its sizes, the other sizes of its series, and those left out. */
export function notOthers(field: Field, peer: Peer, left_out: ReadonlySet<string>): Peer[] {
  const series = field.series.find(({ members }) => members.some((key) => peer.members.includes(key)));
  const own = new Set([...peer.members, ...(series?.members ?? [])]);
  return field.models.filter(({ key }) => own.has(key) || left_out.has(key));
}

const NONE: ByCondition = new Map();

/**
 * The peer beside the others within each set of conditions of one way of coming in.
 *
 * @param season only what came in that season; null: all of them
 */
export function strataOf(field: Field, peer: Peer, without: readonly Peer[], opening: Opening, season: number | null = null): Stratum[] {
  const range = RANGES[opening], strata: Stratum[] = [], total = season === null ? field.total : field.seasons.get(season) ?? NONE;
  const conditions = (of: Peer) => (season === null ? of.conditions : of.seasons.get(season) ?? NONE), gone = without.map(conditions);
  for (const [condition, { inspected, failed }] of conditions(peer)) {
    if (!within(condition, range)) continue;
    const all = total.get(condition) ?? { inspected: 0, failed: 0 };
    let others_inspected = all.inspected, others_failed = all.failed;
    for (const one of gone) {
      const counts = one.get(condition);
      others_inspected -= counts?.inspected ?? 0;
      others_failed -= counts?.failed ?? 0;
    }
    strata.push({ inspected, failed, others_inspected, others_failed });
  }
  return strata;
}

/** The peer beside the others shop by shop, whatever the conditions; one stratum where there is one shop. */
export function shopStrata(field: Field, peer: Peer, without: readonly Peer[], opening: Opening): Stratum[] {
  const by_shop = (conditions: ByCondition) => {
    const shops = new Map<number, Counts>();
    for (const [key, counts] of conditions) if (within(key, RANGES[opening])) added(shops, Math.floor(key / SHOP), counts);
    return shops;
  };
  const mine = by_shop(peer.conditions), gone = without.map(({ conditions }) => by_shop(conditions));
  return [...by_shop(field.total)].map(([shop, all]) => ({
    inspected: mine.get(shop)?.inspected ?? 0, failed: mine.get(shop)?.failed ?? 0,
    others_inspected: gone.reduce((sum, one) => sum - (one.get(shop)?.inspected ?? 0), all.inspected),
    others_failed: gone.reduce((sum, one) => sum - (one.get(shop)?.failed ?? 0), all.failed),
  }));
}
