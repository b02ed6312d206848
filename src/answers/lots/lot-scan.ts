import { falseDiscovery } from "../../stats/false-discovery.ts";
import { seededRandom } from "../../stats/random.ts";
import { windowScan } from "../../stats/window-scan.ts";
import type { Scan } from "../../stats/window-scan.ts";
import { takingTurns } from "../worker-work.ts";
import type { PlainWork, WorkMeans } from "../worker-work.ts";
import { failedIn, fittedIn, kindOf, likeOf } from "./lot-shares.ts";
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
  const kind = numbered(rows.map(kindOf)), like = numbered(rows.map(likeOf));
  const fittings = rows.map(({ month, failed, fitted }, i) => ({ stretch: month - start, kind: kind[i] ?? 0, like: like[i] ?? 0, failed, count: fitted }));
  const shuffled = (times: number, seed: number) => windowScan(fittings, LONGEST, times, seededRandom(seed));
  const first = shuffled(tries ?? FIRST_TRIES, SEED), scan = tries === undefined && first.p !== null && first.p <= UNUSUAL ? shuffled(TRIES, SEED + 1) : first;
  const dated = scan.p !== null && scan.p < SURE ? batchMonths(all, names, LONGEST) : null;
  return { scan, window: dated ?? worstMonths(scan, start, end) };
}

/** Of each lot: the share of false alarms when all are called bad that look as bad as it; null where nothing was looked for. */
export const falseAlarms = (scans: readonly LotScan[]): readonly (number | null)[] => falseDiscovery(scans.map(({ scan }) => scan?.p ?? null));

/**
 * The worst months of so many groups, each fetched when it is looked at: only the one in hand need be in memory.
 *
 * @param groupAt the group of a number from 0; asked again for those near the limit
 */
export async function scanEach(groups: number, groupAt: (at: number) => LotGroup | Promise<LotGroup>, means: WorkMeans): Promise<LotScan[]> {
  const turn = takingTurns(means), scans: LotScan[] = [];
  while (scans.length < groups) {
    await turn("Looking for bad batches", scans.length, groups);
    scans.push(scanned(await groupAt(scans.length)));
  }
  const near = falseAlarms(scans).map((q) => q !== null && q >= NEAR.from && q <= NEAR.to);
  for (const [i, is_near] of near.entries()) {
    if (!is_near) continue;
    await turn("Looking at what is near the limit", i, groups);
    scans[i] = scanned(await groupAt(i), NEAR.tries);
  }
  return scans;
}

/** The worst months of each group, here: in Node, in tests, and in the worker itself. */
export const scanLots: ScanWork = (groups, means) => scanEach(groups.length, (at) => groups[at] as LotGroup, means);
