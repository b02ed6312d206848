import type { Item } from "./item.ts";
import { runTogether, withPassing } from "./joined-items.ts";
import type { Mark } from "./marks.ts";

/** How far a word stood from the part it was taken to speak of. */
export type Reach = "beside" | "shared" | "after" | "ahead" | "next sentence";
/** A word said of a part: how far off, of how many parts, and in which item. */
export interface Told { readonly mark: Mark; readonly reach: Reach; readonly among: number; readonly item: Item }
/** A part of the note with all that was said of it. */
export interface Spoken {
  readonly part: Mark;
  readonly item: Item;
  readonly sentence: number;
  readonly told: Told[];
  /** Nothing was said of it in its own item. */
  readonly bare: boolean;
  /** Something was said behind it of which we do not know whether it is meant. */
  uncertain: boolean;
}

/** Parts that are looked back over in one list. */
const LONGEST = 30;
const GROUPING: ReadonlySet<string> = new Set(["and", "&", "+", "/", "w/"]);
const NEWS_SAYS: ReadonlySet<string> = new Set(["good", "now", "later", "declined", "routine", "needs", "without"]);
const isNews = (mark: Mark) => mark.kind === "mode" || mark.kind === "action" || NEWS_SAYS.has(mark.say ?? "");
export const decides = (mark: Mark) => mark.kind === "action" || ["good", "declined", "later"].includes(mark.say ?? "");
const settled = (one: Spoken) => one.told.some(({ mark }) => decides(mark));
const says = (item: Item, say: Mark["say"]) => item.told.some((mark) => mark.say === say);
/** Drilling out and refitting are done to the part beside which they stand, not to a list. */
const spreads = (mark: Mark) => mark.action?.code !== "EXTRACT" && mark.action?.code !== "REFIT";
const isFitted = (mark: Mark) => mark.action?.action === "replaced" || mark.action?.action === "wanted";
const first = (item: Item) => item.parts[0] as Mark;
const last = (item: Item) => item.parts.at(-1) as Mark;

/** What the customer does not want done is meant of all that was named. */
const REFUSED = /customer|declined|refused|pay|said no|no thanks|too dear|not worth/;

/** Divides what one item says among its parts: to the part before it, or behind it where the item starts with what was done. */
function divide(item: Item): Map<Mark, Mark[]> {
  const shares = new Map<Mark, Mark[]>(item.parts.map((part) => [part, []])), news = item.told.filter(isNews);
  const leads = news.some((mark) => mark.to <= first(item).from), ends = news.some((mark) => mark.from >= last(item).to);
  for (const mark of news) {
    const before = [...item.parts].reverse().find((part) => part.from <= mark.from), after = item.parts.find((part) => part.from >= mark.to);
    const adjective = mark.phrase === "new" && after && after.from - mark.to <= 2;
    const one = (leads && !ends) || adjective ? after ?? before : before ?? after;
    if (one) shares.get(one)?.push(mark);
  }
  const touching = !item.put_between && item.parts.every((part, index) => index === 0 || part.from - (item.parts[index - 1] as Mark).to <= 2);
  const others = item.parts.slice(0, -1);
  if (touching && !leads && others.every((part) => shares.get(part)?.length === 0)) {
    for (const part of others) shares.get(part)?.push(...shares.get(last(item)) ?? []);
  }
  const refused = news.filter((mark) => mark.say === "declined" && mark.from >= last(item).to && REFUSED.test(mark.phrase));
  for (const part of others) {
    const own = shares.get(part) ?? [];
    if (!own.some((mark) => mark.kind === "action" || refused.includes(mark))) own.push(...refused);
  }
  return shares;
}

function give(to: readonly Spoken[], marks: readonly Mark[], reach: Reach, item: Item): void {
  for (const one of to) {
    for (const mark of marks) if (!one.told.some((had) => had.mark === mark)) one.told.push({ mark, reach, among: to.length, item });
  }
}

/** The parts so far that hang together with the last one: bare ones just before it, or those that share its news. */
function group(spoken: readonly Spoken[]): Spoken[] {
  const end = spoken.at(-1), out: Spoken[] = [];
  if (!end) return out;
  for (const one of spoken.slice(-LONGEST).reverse()) {
    const alike = one.told.some((had) => end.told.some((told) => told.mark === had.mark)), shares = alike && one.told.some((had) => had.reach === "shared");
    const open = one.bare && one.item.unknown === 0 && (alike || one.told.length === 0);
    if (one.item !== end.item && (one.item.cleared || !(end.bare ? open : shares))) break;
    out.push(one);
  }
  return out.reverse();
}

/** One sentence as it is read: its parts so far, and what stands ahead of the parts to come. */
interface Reading {
  readonly number: number;
  readonly before: readonly Spoken[];
  readonly out: Spoken[];
  leading: readonly Mark[];
  leader: Item | null;
  headed: boolean;
  /** The news before was of something strange, and what follows it may be too ("nut loose, tightened"). */
  other: boolean;
  closed: boolean;
  same: boolean;
}

/** What is said without a part: of parts to come ("new: body seal, ring"), or of those just named. */
function loose(now: Reading, item: Item, next: Item | undefined): void {
  const news = item.told.filter(isNews);
  if (news.some((mark) => / with$/.test(mark.phrase))) return;
  if (says(item, "rest") && !news.some((mark) => mark.action?.code === "ORDER")) { now.leading = []; return; }
  const latest = now.out.at(-1) ?? now.before.at(-1), open = latest !== undefined && !settled(latest);
  const named = next !== undefined && next.parts.length > 0 && news.length > 0;
  const heading = named && next.joint === "-" && item.joint !== "-";
  const nextLeads = named && next.told.some((mark) => mark.kind === "action" && mark.to <= first(next).from);
  if (heading || (named && !open && ((GROUPING.has(next.joint) && nextLeads) || (now.out.length === 0 && says(item, "routine"))))) {
    [now.leading, now.headed, now.leader] = [news, heading, item];
  } else if (now.out.length > 0 && now.other && !says(item, "both") && !says(item, "all")) group(now.out).forEach((one) => { one.uncertain = true; });
  else if (now.out.length > 0) behind(now.out, item, news);
  else follow(now.before, item, news);
  if (named && GROUPING.has(next.joint) && next.joint !== "w/" && news.some(isFitted) && !next.told.some(isNews)) [now.leading, now.headed, now.leader] = [news, false, item];
  now.other ||= item.other_subject && news.length > 0 && news.every((mark) => mark.kind === "mode");
}

/** The parts that "all" means: those nothing was done to yet; where there are none, those just named. */
function everyOpen(out: readonly Spoken[]): readonly Spoken[] {
  const open = out.slice(-LONGEST).filter((one) => !settled(one) || one.bare);
  return open.length > 0 ? open : group(out);
}

/** News behind parts of the same sentence. */
function behind(out: readonly Spoken[], item: Item, news: readonly Mark[]): void {
  const faulty = news.some((mark) => mark.kind === "action") && out.at(-1)?.told.every(({ mark }) => mark.say === "good") && !out.at(-1)?.bare
    ? out.filter((one) => !settled(one) && one.told.some(({ mark }) => mark.kind === "mode")) : [];
  const many = says(item, "both") ? out.slice(-2) : faulty.length > 0 ? faulty : says(item, "all")
    ? everyOpen(out) : news.some((mark) => mark.say === "declined" && REFUSED.test(mark.phrase)) ? everyOpen(out) : group(out);
  if (item.unknown > 0 && (item.other_subject || news.length === 0)) many.forEach((one) => { one.uncertain = true; });
  else give(many, news, "after", item);
}

/** A part that a later sentence may mean: not one of several that is only named among words we do not know. */
const proper = (one: Spoken) => !one.bare || one.item.unknown === 0;

/** A sentence without a part speaks of the parts just before it that nothing was done to; an order or a new part also of others. */
function follow(before: readonly Spoken[], item: Item, news: readonly Mark[]): void {
  if (says(item, "whole job") || item.unknown > 4 || news.length === 0) return;
  const last = before.length < 2 ? group(before) : group(before).filter(proper), end = last.length > 1 ? last.filter((one) => !one.item.doubt) : last;
  const open = before.slice(-LONGEST).filter((one) => !settled(one) || one.told.some(({ mark }) => mark.say === "needs"));
  const to = says(item, "both") ? open.slice(-2) : says(item, "all") || news.every((mark) => mark.say === "declined")
    ? open : end.filter((one) => !settled(one));
  if (item.other_subject) to.forEach((one) => { one.uncertain = true; });
  else if (to.length > 0) give(news.some(isFitted) ? to.filter((one) => !(one.item.doubt && one.bare)) : to, news, "next sentence", item);
  else if (item.unknown <= 1) {
    give(end.filter((one) => says(item, "both") || !one.told.some(({ mark }) => mark.say === "good")), news.filter(isFitted), "next sentence", item);
  }
}

/** Parts of a list that carry a number of pieces were fitted: only what was replaced or ordered is said of them too. */
function fitted(chain: readonly Spoken[], trailing: readonly Mark[]): readonly Spoken[] {
  return trailing.some(isFitted) ? chain : chain.filter((one) => !one.item.counted);
}

/** It stands in the list by itself: it was not put out of the way, and nothing was said of another part in the same breath. */
const inList = (out: readonly Spoken[], one: Spoken) => one.bare && !one.item.cleared && out.slice(-LONGEST).every((other) => other.item !== one.item || other.bare)
  && one.told.every(({ mark, reach }) => reach === "ahead" && mark.say === "routine");

/** What is said behind the last part of a list may be meant of all of it. */
function share(now: Reading, item: Item, own: readonly Spoken[]): void {
  const trailing = item.told.filter((mark) => isNews(mark) && mark.from >= last(item).to);
  const both = item.told.some((mark) => mark.say === "both" && mark.from >= first(item).to);
  const all = item.told.some((mark) => mark.say === "all" && mark.from >= first(item).to);
  const chain = both || all ? now.out.slice(-LONGEST).filter((one) => !settled(one)) : group(now.out).filter((one) => inList(now.out, one));
  const order = trailing.filter((mark) => mark.action?.code === "ORDER"), latest = now.out.at(-1);
  if (order.length > 0 && latest && GROUPING.has(item.joint) && latest.told.length > 0
    && latest.told.every(({ mark }) => mark.phrase === "new")) give([latest], order, "shared", item);
  if (trailing.length === 0 || chain.length === 0) return;
  if (GROUPING.has(item.joint) || both || all) {
    const shared = trailing.filter(spreads);
    give(both ? chain.slice(-1) : chain, shared, "shared", item);
    own.forEach((one) => one.told.splice(0, one.told.length, ...one.told.map((had) =>
      (shared.includes(had.mark) ? { ...had, reach: "shared" as const } : had))));
  } else if (item.joint === ",") give(fitted(chain, trailing), trailing.filter((mark) => mark.kind === "action" && spreads(mark)), "shared", item);
}

/** An item that names parts. */
function naming(now: Reading, item: Item): void {
  if (item.complaint && !item.told.some((mark) => mark.kind === "action")) return;
  if (item.bracket && !item.told.some(isNews) && now.out.length > 0 && !item.parts.some((part) => part.phrase.includes(" "))) return;
  const shares = divide(item), like = now.out.at(-1) ?? now.before.at(-1);
  const own = item.parts.map((part): Spoken => {
    const told = (shares.get(part) ?? []).map((mark): Told => ({ mark, reach: "beside", among: 1, item }));
    return { part, item, sentence: now.number, told, bare: told.length === 0, uncertain: told.length === 0 && (now.closed || now.same) };
  });
  const bare = own.every((one) => one.bare), trails = item.told.some((mark) => isNews(mark) && mark.from >= last(item).to);
  if (bare && like && says(item, "same")) give(own, like.told.map((had) => had.mark), "shared", item);
  const lead = item.told.filter((mark) => (mark.kind === "action" || mark.say === "needs") && mark.to <= first(item).from && spreads(mark));
  const twice = lead.length > 0 && now.out.length === 0 && GROUPING.has(item.joint);
  if (now.leading.length > 0 && (now.headed || item.unknown === 0) && (bare || now.headed || GROUPING.has(item.joint))) {
    give(own.filter((one) => !settled(one) || twice), now.leading, "ahead", now.leader ?? item);
    const later = item.told.filter((mark) => mark.say === "later");
    give(now.out.filter((one) => one.item === now.leader), later, "shared", item);
  }
  if (item.with_others) give(group(now.out.length > 0 ? now.out : now.before), item.told.filter((mark) => mark.kind === "action" && mark.to <= first(item).from), "after", item);
  share(now, item, own);
  now.closed ||= trails;
  now.other = false;
  if (!bare && !now.headed) now.leader = item;
  if (!bare && !now.headed) now.leading = trails ? [] : twice ? [...now.leading, ...lead] : lead;
  now.out.push(...own);
}

/** The parts that a sentence may speak of besides its own: those of the sentence before, for "both" of the two before. */
function earlier(out: readonly (readonly Spoken[])[], items: readonly Item[]): readonly Spoken[] {
  const recent = out.slice(-4);
  if (items.every((item) => item.parts.length === 0) && items.some((item) => says(item, "declined"))) return out.slice(-4).flat();
  if (items.every((item) => item.parts.length === 0) && items.some((item) => says(item, "all"))) return out.slice(-4).flat();
  if (items.some((item) => says(item, "both"))) return out.slice(-2).flat();
  return recent.findLast((one) => one.length > 0) ?? [];
}

/** All parts of a note, sentence by sentence, with what is said of each. */
export function attach(all: readonly (readonly Item[])[]): Spoken[][] {
  const out: Spoken[][] = [];
  all.forEach((items, number) => {
    const now: Reading = { number, before: earlier(out, items), out: [], leading: [], leader: null, headed: false, other: false, closed: false,
      same: items.some((item) => item.parts.length === 0 && says(item, "same")) };
    const read = runTogether(withPassing(items, all[number + 1]));
    read.forEach((item, index) => (item.parts.length === 0 ? loose(now, item, read[index + 1]) : naming(now, item)));
    out.push(now.out);
  });
  return out;
}
