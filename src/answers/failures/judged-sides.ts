import { pooledShares } from "../../stats/beta-binomial.ts";
import { designEffect, likenessOfMates } from "../../stats/design-effect.ts";
import { falseDiscovery } from "../../stats/false-discovery.ts";
import { beyondOwn } from "../../stats/own-level.ts";
import type { Opening } from "../filter.ts";
import { grouped } from "../grouped.ts";
import { comparedSide } from "./compared-side.ts";
import type { PlainSide } from "./compared-side.ts";
import { standsOut } from "./judged.ts";
import type { Unjudged } from "./judged.ts";
import { countsOf } from "./peers.ts";
import type { Field, Peer } from "./peers.ts";
import type { MatesRow } from "./verdict-records.ts";
import { NO_FIGURE } from "./verdict.ts";
import type { Figure } from "./verdict.ts";

/** One peer of one position; what `looks` are made of. */
export interface Place { readonly field: Field; readonly peer: Peer; readonly family: string }
/** Keys of the models that are not among the others, by position. */
export type LeftOut = ReadonlyMap<string, ReadonlySet<string>>;
/** Lets the screen draw now and then; throws the signal's reason when called off. */
export type Breath = () => Promise<void>;

const NONE: ReadonlySet<string> = new Set();

/** How many times fewer inspections each peer's are worth, because reels came together. */
export function widening(fields: readonly Field[], mates: readonly MatesRow[]): (place: Place, opening: Opening) => number {
  const rows = grouped(mates, ({ position }) => position);
  const likeness = new Map(fields.map((field) => {
    const models = new Map(field.models.map((one) => [one.key, one]));
    const known = (rows.get(field.position) ?? []).flatMap(({ maker, model, opening, ...sums }) => {
      const peer = models.get(JSON.stringify([maker, model]));
      if (!peer || (opening !== "planned" && opening !== "complaint")) return [];
      const { inspected, failed } = countsOf(peer.conditions, opening);
      return inspected === 0 ? [] : [{ ...sums, share: failed / inspected }];
    });
    return [field.position, likenessOfMates(known)] as const;
  }));
  return ({ field, peer }, opening) => {
    const own = (rows.get(field.position) ?? []).filter((row) => peer.members.includes(JSON.stringify([row.maker, row.model])) && (opening === "*" || row.opening === opening));
    const { inspected } = countsOf(peer.conditions, opening), pairs = own.reduce((sum, row) => sum + row.pairs, 0);
    return inspected === 0 ? 1 : designEffect(inspected, pairs, likeness.get(field.position) ?? 0);
  };
}

/** Each peer's share drawn toward the models of its position; a series stands in the place of its sizes. */
export async function drawnIn(fields: readonly Field[], opening: Opening, breath: Breath): Promise<Map<Peer, Figure>> {
  const found = new Map<Peer, Figure>();
  for (const field of fields) {
    const seen = (peers: readonly Peer[]) => peers.map((peer) => ({ peer, ...countsOf(peer.conditions, opening) })).filter(({ inspected }) => inspected > 0);
    const keep = (list: ReturnType<typeof seen>, wanted: (peer: Peer) => boolean) => {
      if (list.length === 0) return;
      const { models } = pooledShares(list);
      list.forEach(({ peer }, i) => { if (wanted(peer)) found.set(peer, { value: models[i]?.share ?? null, low: models[i]?.low ?? null, high: models[i]?.high ?? null }); });
    };
    keep(seen(field.models), () => true);
    for (const series of field.series) keep(seen([...field.models.filter(({ key }) => !series.members.includes(key)), series]), (peer) => peer === series);
    await breath();
  }
  return found;
}

/** Drawn-in share over the plain share of the others; half a failure is lent where they have none. */
function shrunken(pooled: Figure, { others_share, others_inspected }: PlainSide): Figure {
  if (others_share === null) return NO_FIGURE;
  const share = others_share === 0 ? 0.5 / (others_inspected + 1) : others_share;
  const over = (figure: number | null) => (figure === null ? null : figure / share);
  return { value: over(pooled.value), low: over(pooled.low), high: over(pooled.high) };
}

/** Every side beside the other parts of its model. */
function besideOwn(sides: readonly (readonly [Place, PlainSide])[]) {
  const by_model = grouped(sides, ([{ peer }]) => peer.key);
  return sides.map(([{ peer }, { log }]) => {
    const others = (by_model.get(peer.key) ?? []).flatMap(([, other]) => (other.log !== null && other.log !== log ? [other.log] : []));
    return log === null ? null : beyondOwn(log, others);
  });
}

function corrected(places: readonly Place[], p: readonly (number | null)[]): (number | null)[] {
  const found: (number | null)[] = p.map(() => null);
  for (const looks of grouped(places.map(({ family }, i) => ({ family, i })), (look) => look.family).values()) {
    falseDiscovery(looks.map(({ i }) => p[i] ?? null)).forEach((q, j) => { found[looks[j]?.i ?? 0] = q; });
  }
  return found;
}

/** All places seen one way of coming in, beside the others, their model's other parts, and all looks of their family. */
export async function judgedSides({ places, opening, pooled, left_out, widen, breath }: {
  places: readonly Place[]; opening: Opening; pooled: ReadonlyMap<Peer, Figure>; left_out: LeftOut;
  widen: (place: Place, opening: Opening) => number; breath: Breath;
}): Promise<Map<Peer, Unjudged>> {
  const plain: [Place, PlainSide][] = [];
  for (const place of places) {
    const { field, peer } = place, without = left_out.get(field.position) ?? NONE;
    plain.push([place, comparedSide(field, peer, opening, without, widen(place, opening))]);
    await breath();
  }
  const own = besideOwn(plain), q = corrected(places, plain.map(([, side]) => side.p_value)), beyond_q = corrected(places, own.map((one) => one?.p ?? null));
  return new Map(plain.map(([{ peer }, { log: _, ...side }], i) => {
    const beyond = own[i], drawn = pooled.get(peer) ?? NO_FIGURE;
    return [peer, {
      ...side, pooled: drawn, shrunken_ratio: shrunken(drawn, plain[i]?.[1] as PlainSide), own_level: beyond?.own_level ?? null,
      beyond_own: beyond ? { value: beyond.ratio, low: beyond.low, high: beyond.high } : NO_FIGURE, q_value: q[i] ?? null, beyond_q: beyond_q[i] ?? null,
    }] as const;
  }));
}

/** Models that stand out, by position: they are no measure for the others. */
export function outstanding(places: readonly Place[], sides: ReadonlyMap<Peer, Unjudged>): LeftOut {
  const out = places.filter(({ peer }) => { const side = sides.get(peer); return side !== undefined && standsOut(side); });
  return new Map([...grouped(out, ({ field }) => field.position)].map(([position, list]) => [position, new Set(list.flatMap(({ peer }) => peer.members))]));
}
