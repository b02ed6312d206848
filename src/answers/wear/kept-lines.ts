import { columnsOf } from "../../db/arrow-columns.ts";
import type { SqlValue } from "../../db/engine.ts";
import type { Asked, WearLine } from "./wear-records.ts";
import type { Clock, FirstSights, WearFilter } from "./wear.ts";

/** The name under which a worker keeps the lines of a clock. */
export const linesName = (clock: Clock): string => `lines in ${clock}`;

/** What parts of one kind of line have in common besides their exposures. */
interface Trait extends Pick<WearLine, "rinse" | "water" | "tier" | "sealed" | "maker" | "model"> {
  readonly reel_kind: string | null;
  readonly by_fault: boolean;
  readonly first_sight: boolean;
  readonly exposed: boolean | null;
}

/** Lines of one position from `from` to before `to`. */
interface Run { readonly from: number; readonly to: number }

/** The rows of `kept-lines.sql` as columns: a few bytes a line, however long the shop's records are. */
export interface KeptLines {
  readonly positions: ReadonlyMap<string, Run>;
  readonly traits: readonly Trait[];
  readonly low: Float64Array;
  /** NaN: never seen to fail. */
  readonly high: Float64Array;
  readonly trait: Int32Array;
  readonly parts: Int32Array;
  readonly linked: Int32Array;
  readonly mates: Int32Array;
}

const TRAITS = ["rinse", "water", "tier", "sealed", "maker", "model", "reel_kind", "by_fault", "first_sight", "exposed"] as const;

/** Each different set of traits once, and which of them every line has. */
function traitsOf(columns: Record<string, SqlValue[]>, lines: number): { traits: Trait[]; trait: Int32Array } {
  const found = new Map<string, number>(), traits: Trait[] = [], trait = new Int32Array(lines), given = TRAITS.map((name) => columns[name] ?? []);
  for (let at = 0; at < lines; at += 1) {
    const values = given.map((column) => column[at] ?? null), key = JSON.stringify(values), known = found.get(key) ?? traits.length;
    if (known === traits.length) {
      found.set(key, known);
      traits.push(Object.fromEntries(TRAITS.map((name, i) => [name, values[i]])) as unknown as Trait);
    }
    trait[at] = known;
  }
  return { traits, trait };
}

/** Lays the stream of `kept-lines.sql` out for asking. */
export function keptLines(stream: Uint8Array): KeptLines {
  const columns = columnsOf(stream), named = columns["position"] as string[], lines = named.length, positions = new Map<string, Run>();
  for (let from = 0, at = 1; at <= lines; at += 1) {
    if (named[at] === named[from]) continue;
    positions.set(named[from] as string, { from, to: at });
    from = at;
  }
  const whole = (name: string) => Int32Array.from(columns[name] as number[]);
  return {
    positions, ...traitsOf(columns, lines), low: Float64Array.from(columns["low"] as number[]), high: Float64Array.from(columns["high"] as (number | null)[], (value) => value ?? NaN),
    parts: whole("parts"), linked: whole("linked"), mates: whole("mates"),
  };
}

type Told = Omit<WearLine, "position" | "low" | "high" | "parts" | "linked" | "mates">;

const leftOut = ({ by_fault, first_sight, exposed }: Trait, first_sights: FirstSights): WearLine["left_out"] =>
  first_sights !== "all" && (by_fault || (first_sight && first_sights === "none")) ? "chosen by fault" : exposed === null ? "clock missing" : exposed ? null : "no exposure";

const WITHIN = ["rinse", "water", "tier", "sealed", "maker", "model", "left_out"] as const;

/** As the engine orders: by what is told first, nothing last. */
function inOrder(a: Told, b: Told): number {
  for (const name of WITHIN) {
    const one = a[name], other = b[name];
    if (one !== other) return one === null ? 1 : other === null ? -1 : one < other ? -1 : 1;
  }
  return 0;
}

/** What a question tells apart, in order, and which of it every set of traits is; −1 where the filter leaves it out. */
function toldApart(traits: readonly Trait[], { reel_kind, maker, model, water, first_sights }: WearFilter, { conditions, models = conditions }: Asked): { told: Told[]; which: Int32Array } {
  const only = (wanted: string | null, is: string | null) => wanted === null || wanted === is, by = new Map<string, { told: Told; of: number[] }>();
  traits.forEach((trait, at) => {
    if (!only(reel_kind, trait.reel_kind) || !only(maker, trait.maker) || !only(model, trait.model) || !only(water, trait.water)) return;
    const left_out = leftOut(trait, first_sights), { rinse, water: fished, tier, sealed } = trait;
    const told = {
      ...(conditions ? { rinse, water: fished, tier, sealed } : { rinse: null, water: null, tier: null, sealed: null }),
      ...(models ? { maker: trait.maker, model: trait.model } : { maker: null, model: null }), left_out,
    };
    const key = JSON.stringify(WITHIN.map((name) => told[name])), known = by.get(key);
    if (known) known.of.push(at);
    else by.set(key, { told, of: [at] });
  });
  const ordered = [...by.values()].sort((a, b) => inOrder(a.told, b.told)), which = new Int32Array(traits.length).fill(-1);
  ordered.forEach(({ of }, at) => { for (const trait of of) which[trait] = at; });
  return { told: ordered.map(({ told }) => told), which };
}

/** Counts of the lines of one cell of exposures, by what is told apart. */
interface Cell { readonly parts: Int32Array; readonly linked: Int32Array; readonly mates: Int32Array; readonly touched: number[] }

function count(kept: KeptLines, at: number, into: number, { parts, linked, mates, touched }: Cell): void {
  if (parts[into] === 0) touched.push(into);
  parts[into] = (parts[into] as number) + (kept.parts[at] as number);
  linked[into] = (linked[into] as number) + (kept.linked[at] as number);
  mates[into] = (mates[into] as number) + (kept.mates[at] as number);
}

/** The cell's lines in order; the cell is empty again. */
function emptied({ parts, linked, mates, touched }: Cell, told: readonly Told[], ends: Pick<WearLine, "position" | "low" | "high">, into: WearLine[]): void {
  if (touched.length > 1) touched.sort((a, b) => a - b);
  for (const at of touched) {
    const { rinse, water, tier, sealed, maker, model, left_out } = told[at] as Told;
    // Named one by one: two objects spread into one take ten times as long, and there are tens of thousands.
    into.push({
      position: ends.position, low: ends.low, high: ends.high, rinse, water, tier, sealed, maker, model, left_out,
      parts: parts[at] as number, linked: linked[at] as number, mates: mates[at] as number,
    });
    parts[at] = linked[at] = mates[at] = 0;
  }
  touched.length = 0;
}

/**
 * The lines that `lines.sql` gives for the same question, in the same order, from what is kept.
 *
 * @throws {RangeError} when the filter names days: lines are kept without them
 */
export function linesFrom(kept: KeptLines, filter: WearFilter, asked: Asked): WearLine[] {
  if (filter.from !== null || filter.to !== null) throw new RangeError(`linesFrom: needs a filter without days, got ${filter.from ?? "…"} to ${filter.to ?? "…"}`);
  const { told, which } = toldApart(kept.traits, filter, asked), empty = () => new Int32Array(told.length), lines: WearLine[] = [];
  const cell: Cell = { parts: empty(), linked: empty(), mates: empty(), touched: [] }, { low, high, trait } = kept;
  for (const [position, { from, to }] of kept.positions) {
    if (asked.position !== null && position !== asked.position) continue;
    for (let at = from; at < to; at += 1) {
      const into = which[trait[at] as number] as number, good = low[at] as number, failed = high[at] as number;
      if (into >= 0) count(kept, at, into, cell);
      const last = at + 1 === to || low[at + 1] !== good || !Object.is(high[at + 1], failed);
      if (last) emptied(cell, told, { position, low: good, high: Number.isNaN(failed) ? null : failed }, lines);
    }
  }
  return lines;
}
