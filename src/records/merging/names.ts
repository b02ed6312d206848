import type { Engine } from "../../db/engine.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { mergedByItself, nameDecisions } from "./decisions.ts";
import type { NameDecision } from "./decisions.ts";
import namesWritten from "./names-written.sql?raw";
import { proposeMerges } from "./propose-merges.ts";
import type { Confidence, CountedModel, Proposal, WrittenModel } from "./propose-merges.ts";

/** Two names that count as one reel: by the owner's word, or by themselves. */
export interface Merge extends Proposal {
  readonly by: "you" | "itself";
}

export interface Names {
  /** What counts now; each can be undone. */
  readonly merged: readonly Merge[];
  /** What waits for the owner. */
  readonly proposed: readonly Proposal[];
  /** Names the owner keeps apart. */
  readonly apart: readonly CountedModel[];
}

const keyOf = ({ maker, model }: WrittenModel) => JSON.stringify([maker, model]);

const SURENESS: Readonly<Record<Confidence, number>> = { sure: 0, likely: 1, "a guess": 2 };

/** Follows a name to the one it counts as in the end; a circle ends where it began. */
function inTheEnd(from: WrittenModel, next: ReadonlyMap<string, WrittenModel>): WrittenModel {
  const seen = new Set([keyOf(from)]);
  let at = from;
  for (let to = next.get(keyOf(at)); to && !seen.has(keyOf(to)); to = next.get(keyOf(at))) {
    seen.add(keyOf(to));
    at = to;
  }
  return at;
}

/** The names as they stand once the owner's word is followed: what is another name goes to its account. */
function afterDecisions(written: readonly CountedModel[], next: ReadonlyMap<string, WrittenModel>): CountedModel[] {
  const left = new Map<string, CountedModel>();
  for (const { n, listed, ...name } of written) {
    const end = inTheEnd(name, next), before = left.get(keyOf(end));
    left.set(keyOf(end), { maker: end.maker, model: end.model, n: n + (before?.n ?? 0), listed: listed || (before?.listed ?? false) });
  }
  return [...left.values()];
}

/**
 * What of the names counts as one reel, what is proposed, and what is kept apart.
 *
 * @param level how sure a proposal must be to count without being asked
 */
export function namesOf(written: readonly CountedModel[], decisions: readonly NameDecision[], level: Confidence): Names {
  const known = new Map(written.map((one) => [keyOf(one), one]));
  const counted = (name: WrittenModel): CountedModel => known.get(keyOf(name)) ?? { maker: name.maker, model: name.model, n: 0, listed: false };
  const byOwner = decisions.flatMap(({ from, to }): Merge[] => (to === null || !known.has(keyOf(from))
    ? [] : [{ from: counted(from), to: counted(to), reason: "you said so", confidence: "sure", by: "you" }]));
  const word = new Map(byOwner.map(({ from, to }) => [keyOf(from), to]));
  const apartKeys = new Set(decisions.filter(({ to }) => to === null).map(({ from }) => keyOf(from)));
  const proposals = proposeMerges(afterDecisions(written, word)).filter(({ from }) => !apartKeys.has(keyOf(from)) && known.has(keyOf(from)));
  const byItself = proposals.filter(({ confidence }) => SURENESS[confidence] <= SURENESS[level]).map((one): Merge => ({ ...one, by: "itself" }));
  const first = [...byOwner, ...byItself], next = new Map(first.map(({ from, to }) => [keyOf(from), to]));
  const merged = first.map((one) => ({ ...one, from: counted(one.from), to: counted(inTheEnd(one.from, next)) })).filter(({ from, to }) => keyOf(from) !== keyOf(to));
  const proposed = proposals.filter(({ confidence }) => SURENESS[confidence] > SURENESS[level]);
  const apart = written.filter((one) => apartKeys.has(keyOf(one)));
  return { merged, proposed, apart };
}

/** The names in the records, and what is decided of them. */
export async function names(engine: Engine, ledger: Ledger): Promise<Names> {
  return namesOf(await engine.rows<CountedModel>(namesWritten), await nameDecisions(ledger), await mergedByItself(ledger));
}
