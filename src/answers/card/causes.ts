import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { complaintOf, type ComplaintWords } from "./complaint-of.ts";

/** What a complaint usually turns out to be: one line of the trade's list, in tickets of 100. */
export interface UsualCause { readonly code: string; readonly reel_kind: string; readonly cause: string; readonly positions: readonly string[]; readonly share: number }

/** One row of `complaint-faults.sql`. */
export type ComplaintFaults = { readonly complaint: string; readonly failed: string; readonly tickets: number };

export interface Cause {
  readonly cause: string;
  /** Positions to look at; none where no part is at fault. */
  readonly positions: readonly string[];
  /** Chance 0…1 that this is it, and the range in which it plausibly lies. */
  readonly chance: number;
  readonly low: number;
  readonly high: number;
  /** Share 0…1 by common practice; null for what only this shop's tickets show. */
  readonly usual: number | null;
  /** Of this shop's tickets with the complaint those that turned out so; a ticket with several faults is shared out among them. */
  readonly own: number;
}

export interface Causes {
  readonly code: string;
  /** This shop's finished tickets with the complaint on such reels. */
  readonly own_tickets: number;
  /** Where most of the weight lies. */
  readonly leans_on: "common practice" | "this shop's own jobs";
  readonly causes: readonly Cause[];
}

/** The trade's list weighs as much as so many tickets (common practice, no source). */
export const USUAL_WEIGHT = 10;

const NOT_LISTED = "something else", NOTHING = "nothing found wrong";

interface Draft { readonly cause: string; readonly positions: readonly string[]; readonly usual: number | null; own: number }

/** Shares a ticket out among the causes whose positions had failed. */
function credit(drafts: readonly Draft[], failed: readonly string[], tickets: number, others: { readonly else: Draft; readonly nothing: Draft }): void {
  const hit = failed.length === 0 ? [others.nothing] : drafts.filter(({ positions }) => positions.some((one) => failed.includes(one)));
  const to = hit.length === 0 ? [others.else] : hit;
  for (const draft of to) draft.own += tickets / to.length;
}

/**
 * What a complaint is likely to turn out to be on one kind of reel.
 *
 * The trade's list stands for ten tickets (a Dirichlet prior), this shop's own tickets are added to it as they were found; ranges are
 * those of the Beta margins (Gelman et al., Bayesian Data Analysis, 3rd ed., 3.4). So the list is outweighed from eleven tickets on.
 *
 * @param code of the complaint
 * @returns likeliest first; null when neither the list nor the shop knows the complaint on such reels
 */
export function causesOf(
  code: string, reel_kind: string, usual: readonly UsualCause[], faults: readonly ComplaintFaults[], complaints: readonly ComplaintWords[], level = 0.95,
): Causes | null {
  const listed = usual.filter((one) => one.code === code && one.reel_kind === reel_kind), whole = listed.reduce((sum, { share }) => sum + share, 0);
  const drafts: Draft[] = listed.map(({ cause, positions, share }) => ({ cause, positions, usual: share / whole, own: 0 }));
  const others = { else: { cause: NOT_LISTED, positions: [], usual: null, own: 0 }, nothing: { cause: NOTHING, positions: [], usual: null, own: 0 } };
  const own = faults.filter(({ complaint }) => complaintOf(complaint, complaints) === code), own_tickets = own.reduce((sum, { tickets }) => sum + tickets, 0);
  if (listed.length === 0 && own_tickets === 0) return null;
  for (const { failed, tickets } of own) credit(drafts, failed === "" ? [] : failed.split(";"), tickets, others);
  const weight = (listed.length === 0 ? 0 : USUAL_WEIGHT) + own_tickets;
  const all = [...drafts, ...[others.else, others.nothing].filter((draft) => draft.own > 0)];
  const causes = all.map((draft): Cause => {
    const part = USUAL_WEIGHT * (draft.usual ?? 0) + draft.own, rest = Math.max(weight - part, 1e-9), tail = (1 - level) / 2;
    return { ...draft, chance: part / weight, low: part === 0 ? 0 : betaQuantile(tail, part, rest), high: part === 0 ? 0 : betaQuantile(1 - tail, part, rest) };
  });
  return { code, own_tickets, leans_on: own_tickets > USUAL_WEIGHT ? "this shop's own jobs" : "common practice", causes: causes.sort((a, b) => b.chance - a.chance) };
}
