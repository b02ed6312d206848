import { lettersAllowed, lettersApart } from "./likeness.ts";
import { makersRead } from "./maker-names.ts";
import type { MakerRead } from "./maker-names.ts";
import { modelName } from "./model-name.ts";
import type { ModelName } from "./model-name.ts";

export interface WrittenModel {
  readonly maker: string | null;
  readonly model: string;
}

export interface CountedModel extends WrittenModel {
  /** Tickets that say so. */
  readonly n: number;
  /** The shop's own list of models has it. */
  readonly listed: boolean;
}

/** `sure` differs in nothing but writing and is put together by itself; the others wait for the owner. */
export type Confidence = "sure" | "likely" | "a guess";

/** Two names that are probably one reel. */
export interface Proposal {
  readonly from: CountedModel;
  readonly to: CountedModel;
  /** One plain clause. */
  readonly reason: string;
  readonly confidence: Confidence;
}

const CONFIDENCES: readonly Confidence[] = ["sure", "likely", "a guess"];
const least = (a: Confidence, b: Confidence): Confidence => (CONFIDENCES.indexOf(a) > CONFIDENCES.indexOf(b) ? a : b);

type Clue = { readonly confidence: Confidence; readonly reason: string };

/** A name with its pieces, taken apart once. */
interface Parted {
  readonly name: CountedModel;
  readonly whole: ModelName;
  /** Without words such as "left" behind the size. */
  readonly plain: ModelName;
}

const parted = (name: CountedModel): Parted => ({ name, whole: modelName(name.model), plain: modelName(name.model, false) });

function makerClue(from: CountedModel, to: CountedModel, makers: ReadonlyMap<string, MakerRead>): Clue | null {
  if (from.maker === to.maker) return { confidence: "sure", reason: "" };
  if (from.maker === null) return { confidence: "sure", reason: `${String(to.maker)} is the only maker of it here` };
  if (to.maker === null) return null;
  const read = makers.get(from.maker), other = makers.get(to.maker)?.maker;
  if (!read || read.maker !== other) return null;
  if (read.how === "same") return { confidence: "sure", reason: "the maker is written in another way" };
  return { confidence: "likely", reason: read.how === "alike" ? `${from.maker} is nearly ${to.maker}` : `${from.maker} is short for ${to.maker}` };
}

function modelClue(from: Parted, to: Parted): Clue | null {
  const a = from.whole, b = to.whole;
  if (a.size !== b.size && a.size !== "") return null;
  const sized = a.size === b.size;
  if (sized && a.base === b.base && a.tail === b.tail) return { confidence: "sure", reason: from.name.model === to.name.model ? "" : "only case, spaces or hyphens differ" };
  if (from.plain.tail !== to.plain.tail && sized) return null;
  const most = lettersAllowed(Math.min(from.plain.base.length, to.plain.base.length)), apart = lettersApart(from.plain.base, to.plain.base, most);
  if (apart > most) return null;
  const spelling = apart === 0 ? null : `${apart === 1 ? "one letter differs" : "two letters differ"}`;
  if (!sized) return { confidence: spelling === null ? "likely" : "a guess", reason: ["no size is written and only one is known", spelling].filter(Boolean).join("; ") };
  if (spelling === null) return { confidence: "likely", reason: "what stands beside the size does not name another model" };
  return { confidence: apart === 1 ? "likely" : "a guess", reason: spelling };
}

/** A proposal whose names are still apart. */
interface Candidate extends Clue {
  readonly from: Parted;
  readonly to: Parted;
}

function candidate(from: Parted, to: Parted, makers: ReadonlyMap<string, MakerRead>): Candidate | null {
  const maker = makerClue(from.name, to.name, makers), model = maker && modelClue(from, to);
  if (!maker || !model) return null;
  return { from, to, confidence: least(maker.confidence, model.confidence), reason: [model.reason, maker.reason].filter(Boolean).join("; ") };
}

/** What is on the shop's list comes first, then names with their maker, then the commoner. */
const inRank = ({ name: a }: Parted, { name: b }: Parted) =>
  Number(b.listed) - Number(a.listed) || Number(b.maker !== null) - Number(a.maker !== null) || b.n - a.n
  || (`${a.model} ${String(a.maker)}` < `${b.model} ${String(b.maker)}` ? -1 : 1);

/** A name is taken for a misspelling only of one that is on the list or much commoner. */
const isCommoner = ({ from, to, confidence }: Candidate) => confidence === "sure" || to.name.listed || to.name.n >= 3 * from.name.n;

/** The one name that fits best; none where two different reels fit as well, such as one model of two makers. */
function best(all: readonly Candidate[]): Candidate | null {
  for (const confidence of CONFIDENCES) {
    const [first, ...others] = all.filter((one) => one.confidence === confidence);
    if (!first) continue;
    const { maker } = first.to.name;
    const isSame = ({ to }: Candidate) => modelClue(to, first.to)?.confidence === "sure" && (to.name.maker === null || maker === null || to.name.maker === maker);
    return others.every(isSame) ? first : null;
  }
  return null;
}

/** Sizes that are known of a name without one; a second size makes every guess at it void. */
function hasOneSize({ from }: Candidate, all: readonly Candidate[]): boolean {
  return from.whole.size !== "" || new Set(all.map(({ to }) => to.whole.size).filter((size) => size !== "")).size <= 1;
}

/**
 * Names that are probably one reel: in other writing, misspelt, with the maker missing, or without the size where only one
 * is known. Names with different sizes are never proposed. Each name is proposed at most once, onto one that stays.
 *
 * A Winbeck 40 of 3 tickets beside a Whinbeck 40 of 389 is likely the same: one letter differs. A Whinbeck 50 is not.
 */
export function proposeMerges(models: readonly CountedModel[]): Proposal[] {
  const makers = makersRead(countsOf(models)), staying: Parted[] = [], found: Proposal[] = [];
  for (const from of models.map(parted).sort(inRank)) {
    const all = from.name.listed && from.name.maker !== null ? [] : staying.map((to) => candidate(from, to, makers)).filter((one) => one !== null).filter(isCommoner);
    const chosen = best(all);
    if (chosen && hasOneSize(chosen, all)) found.push({ from: from.name, to: chosen.to.name, reason: chosen.reason, confidence: chosen.confidence });
    else staying.push(from);
  }
  return found;
}

function countsOf(models: readonly CountedModel[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { maker, n, listed } of models) if (maker !== null) counts.set(maker, (counts.get(maker) ?? 0) + n + (listed ? 1000 : 0));
  return counts;
}
