import type { PolicyScore, Replay } from "../replay/replay.ts";

/** How the stock advice would have done on the shop's own past. */
export interface AdviceScore {
  readonly from: string;
  readonly to: string;
  /** Jobs tried, and those that would have waited for a part as advised, on average over the draws of delivery days. */
  readonly jobs: number;
  readonly waited: number;
  /** The same under each habit. */
  readonly habits: readonly { readonly policy: string; readonly waited: number }[];
}

const waits = (score: PolicyScore | undefined): number | null => (score?.waited ? Math.round(score.waited.mean) : null);

/** The score as the morning sheet tells it; null where the past is too short to try the advice on. */
export function adviceScore({ status, from, to, scores }: Pick<Replay, "status" | "from" | "to" | "scores">): AdviceScore | null {
  const own = scores.find(({ kind }) => kind === "advice"), waited = waits(own);
  if (status !== "ok" || own === undefined || waited === null || from === null || to === null) return null;
  const habits = scores.filter(({ kind }) => kind === "habit").flatMap((one) => { const of = waits(one); return of === null ? [] : [{ policy: one.policy, waited: of }]; });
  return { from, to, jobs: own.jobs, waited, habits };
}
