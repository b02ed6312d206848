import type { NoteCell, NoteFinding } from "./note-finding.ts";

/** A finding, and whether it is only mentioned: by itself it is none, but its fault may belong to a firm one. */
export interface Weighed { readonly one: NoteFinding; readonly weak: boolean }

const STRENGTH = ["left", "lubricated", "cleaned", "adjusted", "wanted", "replaced"];
const strength = (one: NoteFinding) => (one.action === null ? -1 : STRENGTH.indexOf(one.action));

/** Pieces of two mentions of one part: a list of parts adds them up, a note speaks of the same pieces again. */
function pieces(best: NoteFinding, other: NoteFinding, cell: NoteCell): Pick<NoteFinding, "qty" | "qty_assumed"> {
  const { qty, qty_assumed } = best;
  if (qty === null || other.qty === null || best.action !== other.action) return { qty, qty_assumed };
  if (cell === "parts" && best.start !== other.start) return { qty: qty + other.qty, qty_assumed };
  return qty_assumed && !other.qty_assumed ? { qty: other.qty, qty_assumed: false } : { qty, qty_assumed };
}

function together(had: NoteFinding, one: NoteFinding, cell: NoteCell): NoteFinding {
  const best = strength(one) > strength(had) ? one : had, other = best === one ? had : one;
  const least = best.grade_at_most !== null ? null : other.grade_at_least === null
    ? best.grade_at_least : Math.max(best.grade_at_least ?? 0, other.grade_at_least);
  return {
    ...best, ...pieces(best, other, cell), mode: best.mode ?? other.mode, size: best.size ?? other.size,
    routine: best.routine || other.routine, grade_at_least: least,
  };
}

/** What a note says of its parts, one finding a position: with something said of it, or only mentioned. */
export interface Merged { readonly firm: readonly NoteFinding[]; readonly mentioned: readonly NoteFinding[] }

/** One finding a position: the strongest thing done to it, with the fault said of it elsewhere in the note. Unplaced ones stay apart. */
export function merged(all: readonly Weighed[], cell: NoteCell): Merged {
  const out = new Map<string, NoteFinding>(), firm = new Set<string>();
  all.forEach(({ one, weak }, index) => {
    const key = one.position ?? `?${index}`, had = out.get(key);
    if (!weak) firm.add(key);
    out.set(key, had ? together(had, one, cell) : one);
  });
  const having = (is_firm: boolean) => [...out].flatMap(([key, one]) => (firm.has(key) === is_firm ? [one] : []));
  return { firm: having(true), mentioned: having(false) };
}
