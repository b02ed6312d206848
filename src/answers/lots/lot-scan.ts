import { falseDiscovery } from "../../stats/false-discovery.ts";
import { seededRandom } from "../../stats/random.ts";
import { windowScan } from "../../stats/window-scan.ts";
import type { Scan } from "../../stats/window-scan.ts";
import { takingTurns } from "../worker-work.ts";
import type { PlainWork } from "../worker-work.ts";
import { failedIn, fittedIn, kindOf } from "./lot-shares.ts";
import type { RefittedRow } from "./lot-shares.ts";
import { batchMonths, numbered, worstMonths } from "./lot-window.ts";
import type { LotWindow, NameRow } from "./lot-window.ts";

/** Fourteen months: a part that fails sooner failed early. */
export const WITHIN_DAYS = 425;
/** Chance below which a batch is suspected. */
export const SURE = 0.05;
/** The longest window, in months of fitting. */
const LONGEST = 9;
/** From so many fittings looked at again, and so many early failures among them, a window is looked for. */
const ENOUGH = { fitted: 30, failed: 8 } as const;
/** A first look at few shufflings; only what may be unusual is shuffled more often. */
const FIRST_TRIES = 99, TRIES = 1999, UNUSUAL = 0.1;
/** So near the limit, on either side, the word would hang on the luck of the shuffling: ten times as many settle it. */
const NEAR = { from: SURE / 2, to: SURE * 2, tries: 19_999 } as const;
const SEED = 2404;

/** What was fitted of one size (or part) and supplier, and the batches written beside it; some of it was looked at again soon. */
export interface LotGroup { readonly rows: readonly RefittedRow[]; readonly names: readonly NameRow[] }
/** Null scan where there is too little to look. */
export interface LotScan { readonly scan: Scan | null; readonly window: LotWindow }
/** One scan a group, in the order of the groups. */
export type ScanWork = PlainWork<readonly LotGroup[], readonly LotScan[]>;

function scanned({ rows: all, names }: LotGroup, tries?: number): LotScan {
  const rows = all.filter(({ soon }) => soon), months = rows.map(({ month }) => month), start = Math.min(...months), end = Math.max(...months);
  if (fittedIn(rows) < ENOUGH.fitted || failedIn(rows) < ENOUGH.failed) return { scan: null, window: worstMonths(null, start, end) };
  const kind = numbered(rows.map(kindOf)), like = numbered(rows.map(({ position, fished }) => `${position} ${fished}`));
  const fittings = rows.map(({ month, failed, fitted }, i) => ({ stretch: month - start, kind: kind[i] ?? 0, like: like[i] ?? 0, failed, count: fitted }));
  const shuffled = (times: number, seed: number) => windowScan(fittings, LONGEST, times, seededRandom(seed));
  const first = shuffled(tries ?? FIRST_TRIES, SEED), scan = tries === undefined && first.p !== null && first.p <= UNUSUAL ? shuffled(TRIES, SEED + 1) : first;
  const dated = scan.p !== null && scan.p < SURE ? batchMonths(all, names, LONGEST) : null;
  return { scan, window: dated ?? worstMonths(scan, start, end) };
}

/** The worst months of each group, here: in Node, in tests, and in the worker itself. */
export const scanLots: ScanWork = async (groups, means) => {
  const turn = takingTurns(means), scans: LotScan[] = [];
  for (const group of groups) {
    await turn("Looking for bad batches", scans.length, groups.length);
    scans.push(scanned(group));
  }
  const near = falseDiscovery(scans.map(({ scan }) => scan?.p ?? null)).map((q) => q !== null && q >= NEAR.from && q <= NEAR.to);
  for (const [i, group] of groups.entries()) {
    if (!near[i]) continue;
    await turn("Looking at what is near the limit", i, groups.length);
    scans[i] = scanned(group, NEAR.tries);
  }
  return scans;
};
