import { TAKEN_FROM } from "./confidence.ts";
import { familyOf } from "./lexicon.ts";
import type { NoteFinding, NoteReading } from "./note-finding.ts";
import { wordingKey, type OwnReading, type ReadAs } from "./own-readings.ts";

/** What is taken of a note, and what its owner has to be asked about. */
export interface Settled { readonly taken: readonly NoteFinding[]; readonly asked: readonly NoteFinding[] }

/** Part and work of a finding. */
export const readAs = ({ position, family, action }: NoteFinding): ReadAs => ({ place: position ?? `?${family ?? ""}`, action });

/** A finding as its owner says it is. */
function asSaid(one: NoteFinding, { place, action }: ReadAs): NoteFinding {
  const position = place.startsWith("?") ? null : place, counted = action === "replaced" || action === "wanted";
  return {
    ...one, position, family: position === null ? place.slice(1) : familyOf.get(position) ?? null, action, routine: counted && one.routine,
    qty: counted ? one.qty ?? 1 : null, qty_assumed: counted && (one.qty === null || one.qty_assumed), rule: "you said so", confidence: 1,
  };
}

/**
 * Divides a note's findings into those that are taken, because they are sure enough or their owner said so, and those to be asked about. What the
 * owner said is no finding is in neither.
 */
export function settled({ findings, mentions }: NoteReading, said: ReadonlyMap<string, OwnReading>): Settled {
  const taken: NoteFinding[] = [], asked: NoteFinding[] = [];
  const mentioned = new Set(mentions);
  for (const one of [...findings, ...mentions]) {
    const answer = said.size === 0 ? undefined : said.get(wordingKey(one.text, readAs(one)));
    if (answer) { if (answer.means) taken.push(asSaid(one, answer.means)); }
    else (one.confidence >= TAKEN_FROM && !mentioned.has(one) ? taken : asked).push(one);
  }
  const placed = new Set<string>(), once = taken.filter(({ position }) => position === null || (!placed.has(position) && placed.add(position)));
  return { taken: once, asked: asked.filter(({ position }) => position === null || !placed.has(position)) };
}
