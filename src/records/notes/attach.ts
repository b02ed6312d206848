import type { Item } from "./items.ts";
import type { Mark } from "./marks.ts";

/** How far a word stood from the part it was taken to speak of. */
export type Reach = "beside" | "shared" | "after" | "ahead" | "next sentence";
/** `among`: how many parts the word was taken to speak of. */
export interface Told { readonly mark: Mark; readonly reach: Reach; readonly among: number }
/** A part of the note with all that was said of it. `bare`: nothing was said in its own item. */
export interface Spoken {
  readonly part: Mark;
  readonly item: Item;
  readonly sentence: number;
  readonly told: Told[];
  bare: boolean;
}

/** Parts that are looked back over in one list. */
const LONGEST = 30;
const GROUPING: ReadonlySet<string> = new Set(["and", "&", "+", "/", "w/"]);
const NEWS = (mark: Mark) => mark.kind === "mode" || mark.kind === "action" || ["good", "later", "declined", "routine", "needs", "without"].includes(mark.say ?? "");
const ACTS = (mark: Mark) => mark.kind === "action" || ["good", "declined", "later"].includes(mark.say ?? "");
const settled = (one: Spoken) => one.told.some(({ mark }) => ACTS(mark));
const says = (item: Item, say: Mark["say"]) => item.told.some((mark) => mark.say === say);
const spreads = (mark: Mark) => mark.action?.code !== "EXTRACT" && mark.action?.code !== "REFIT";

/** Divides what one item says among its parts: to the part before it, or behind it where the item starts with what was done. */
function divide(item: Item): Map<Mark, Mark[]> {
  const shares = new Map<Mark, Mark[]>(item.parts.map((part) => [part, []]));
  const first = item.parts[0], news = item.told.filter(NEWS);
  if (!first) return shares;
  const leads = news.some((mark) => mark.to <= first.from), ends = news.some((mark) => mark.from >= (item.parts.at(-1) as Mark).to);
  for (const mark of news) {
    const before = [...item.parts].reverse().find((part) => part.from <= mark.from), after = item.parts.find((part) => part.from >= mark.to);
    const inPart = item.parts.find((part) => part.from <= mark.from && part.to >= mark.to);
    const one = inPart ?? (leads && !ends ? after ?? before : before ?? after);
    if (one) shares.get(one)?.push(mark);
  }
  const touching = item.parts.length > 1 && item.parts.every((part, index) => index === 0 || part.from - (item.parts[index - 1] as Mark).to <= 2);
  const last = shares.get(item.parts.at(-1) as Mark) ?? [];
  if (touching && !leads && item.parts.slice(0, -1).every((part) => shares.get(part)?.length === 0)) {
    for (const part of item.parts.slice(0, -1)) shares.get(part)?.push(...last);
  }
  return shares;
}

const give = (to: readonly Spoken[], marks: readonly Mark[], reach: Reach) => {
  for (const one of to) for (const mark of marks) if (!one.told.some((had) => had.mark === mark)) one.told.push({ mark, reach, among: to.length });
};

/** The parts of the sentence so far that hang together with the last one: bare ones just before it, or those that share its news. */
function group(spoken: readonly Spoken[]): Spoken[] {
  const last = spoken.at(-1);
  if (!last) return [];
  const out: Spoken[] = [];
  for (const one of spoken.slice(-LONGEST).reverse()) {
    const same = one.item === last.item || (last.bare ? one.bare : one.told.some((had) => had.reach === "shared" && last.told.some((told) => told.mark === had.mark)));
    if (!same) break;
    out.push(one);
  }
  return out.reverse();
}

/** Reading of one sentence: `before` are the parts of the sentence before it. */
function sentence(items: readonly Item[], number: number, before: readonly Spoken[]): Spoken[] {
  const out: Spoken[] = [];
  let leading: Mark[] = [], headed = false;
  items.forEach((item, index) => {
    const news = item.told.filter(NEWS);
    if (item.parts.length === 0) {
      if (says(item, "rest") && !news.some((mark) => mark.action?.code === "ORDER")) { leading = []; return; }
      const next = items[index + 1], nextLeads = next?.told.some((mark) => mark.kind === "action" && next.parts[0] && mark.to <= next.parts[0].from) ?? false;
      const latest = out.at(-1) ?? before.at(-1), open = latest !== undefined && !settled(latest);
      const named = next !== undefined && next.parts.length > 0 && news.length > 0, heading = named && next.joint === "-" && item.joint !== "-";
      if (heading || (named && !open && ((GROUPING.has(next.joint) && nextLeads) || (out.length === 0 && says(item, "routine"))))) { leading = news; headed = heading; return; }
      if (out.length > 0) give(says(item, "both") ? out.slice(-2) : says(item, "all") ? out.slice(-LONGEST).filter((one) => !settled(one) || one.bare) : group(out), news, "after");
      else follow(before, item, news);
      return;
    }
    const shares = divide(item), own: Spoken[] = [];
    for (const part of item.parts) {
      const told = shares.get(part) ?? [];
      own.push({ part, item, sentence: number, told: told.map((mark) => ({ mark, reach: "beside", among: 1 })), bare: told.length === 0 });
    }
    const bare = own.every((one) => one.bare), first = item.parts[0] as Mark;
    const trailing = news.filter((mark) => mark.from >= (item.parts.at(-1) as Mark).to), lead = news.filter((mark) => mark.kind === "action" && mark.to <= first.from && spreads(mark));
    const like = out.at(-1) ?? before.at(-1);
    if (bare && like && says(item, "same")) give(own, like.told.map((had) => had.mark), "shared");
    if (leading.length > 0 && (bare || headed || GROUPING.has(item.joint))) give(own.filter((one) => !settled(one)), leading, "ahead");
    if (trailing.length > 0) {
      const chain = group(out).filter((one) => one.bare && one.told.length === 0);
      const many = item.told.some((mark) => (mark.say === "both" || mark.say === "all") && mark.from >= first.to);
      if (chain.length > 0 && (GROUPING.has(item.joint) || many)) {
        const shared = trailing.filter(spreads), to = says(item, "both") && many ? chain.slice(-1) : chain;
        give(to, shared, "shared");
        own.forEach((one) => { one.told.splice(0, one.told.length, ...one.told.map((had) => (shared.includes(had.mark) ? { ...had, reach: "shared" as const } : had))); });
      } else if (item.joint === ",") give(chain, trailing.filter((mark) => mark.action?.action === "replaced" || mark.action?.action === "wanted"), "shared");
    }
    if (!bare) { leading = trailing.length === 0 ? lead : headed ? leading : []; if (trailing.length === 0 && lead.length === 0 && !headed) leading = []; }
    out.push(...own);
  });
  return out;
}

/** A sentence without a part speaks of the parts just before it that nothing was done to; an order or a new part also of others. */
function follow(before: readonly Spoken[], item: Item, news: readonly Mark[]): void {
  if (says(item, "whole job") || item.unknown > 4 || news.length === 0) return;
  const last = group(before), open = before.slice(-LONGEST).filter((one) => !settled(one));
  const to = says(item, "both") ? open.slice(-2) : says(item, "all") ? open : last.filter((one) => !settled(one));
  const stronger = news.filter((mark) => mark.action?.action === "replaced" || mark.action?.action === "wanted");
  if (to.length > 0) give(to, news, "next sentence");
  else if (item.unknown <= 1 && stronger.length > 0) give(last.filter((one) => !one.told.some(({ mark }) => mark.say === "good")), stronger, "next sentence");
}

/** All parts of a note with what is said of each. */
export function attach(all: readonly (readonly Item[])[]): Spoken[][] {
  const out: Spoken[][] = [];
  all.forEach((items, number) => {
    const recent = out.slice(-2), before = recent.at(-1)?.length || !items.some((item) => says(item, "both")) ? recent.at(-1) ?? [] : [];
    const two = items.some((item) => says(item, "both")) ? recent.flat() : before.length > 0 ? before : recent[0] ?? [];
    out.push(sentence(items, number, two));
  });
  return out;
}
