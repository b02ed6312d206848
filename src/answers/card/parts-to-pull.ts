import { grouped } from "../grouped.ts";
import type { RestockLine } from "../stock/restock-line.ts";

/** One row of `fitted-parts.sql`. */
export type FittedPart = { readonly position: string; readonly part_no: string; readonly qty: number };

/** A part to have ready, with what the shelf says of it. */
export interface PartToPull {
  readonly positions: readonly string[];
  readonly part_no: string;
  readonly name: string | null;
  /** Pieces for all the positions together. */
  readonly qty: number;
  readonly on_hand: number | null;
  readonly on_order: number;
  /** Open jobs wait for so many. */
  readonly waiting: number;
  readonly supplier: string | null;
  /** Days until it is here when it has to be ordered; null where nobody knows. */
  readonly lead_days: number | null;
  readonly lead_from: "observed" | "quoted" | "assumed" | null;
  readonly unit_cost: number | null;
  /** `look into the drawer`: one number stands for several kinds. */
  readonly shelf: "there" | "not enough" | "not known" | "look into the drawer";
}

export interface PartsToPull {
  readonly parts: readonly PartToPull[];
  /** Positions for which no part number is written for this model. */
  readonly unwritten: readonly string[];
}

function shelfWord(line: RestockLine | undefined, qty: number): PartToPull["shelf"] {
  if (line?.status === "refused") return "look into the drawer";
  if (!line || line.on_hand === null) return "not known";
  return line.on_hand - line.waiting >= qty ? "there" : "not enough";
}

/**
 * What to have ready for the positions that are likely at fault.
 *
 * A part that is the same thing under another number counts with it: the shelf is that of its interchange group.
 *
 * @param positions likeliest first
 */
export function partsToPull(positions: readonly string[], fitted: readonly FittedPart[], lines: readonly RestockLine[]): PartsToPull {
  const line_of = new Map(lines.flatMap((line) => line.part_nos.map((part_no) => [part_no, line] as const)));
  const wanted = new Map<string, { readonly line: RestockLine | undefined; readonly part_no: string; positions: string[]; qty: number }>();
  for (const position of positions) {
    // Two numbers of one thing at one place are alternatives: the place takes one of them.
    const here = grouped(fitted.filter((one) => one.position === position), ({ part_no }) => line_of.get(part_no)?.interchange ?? part_no);
    for (const [key, some] of here) {
      const line = line_of.get(some[0]?.part_no ?? ""), known = wanted.get(key) ?? { line, part_no: line?.part_no ?? some[0]?.part_no ?? key, positions: [], qty: 0 };
      wanted.set(key, { ...known, positions: [...known.positions, position], qty: known.qty + Math.max(...some.map(({ qty }) => qty)) });
    }
  }
  const parts = [...wanted.values()].map(({ line, part_no, positions: at, qty }): PartToPull => ({
    positions: at, part_no, name: line?.name ?? null, qty, on_hand: line?.on_hand ?? null, on_order: line?.on_order ?? 0, waiting: line?.waiting ?? 0,
    supplier: line?.supplier ?? null, lead_days: line?.lead.days ?? null, lead_from: line?.lead.source ?? null, unit_cost: line?.unit_cost ?? null, shelf: shelfWord(line, qty),
  }));
  return { parts, unwritten: positions.filter((position) => fitted.every((one) => one.position !== position)) };
}
