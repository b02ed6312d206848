import type { PlainWork, WorkMeans } from "../worker-work.ts";
import { adviceOf } from "./advise.ts";
import type { Advice } from "./advice.ts";
import type { AdviceRecords } from "./advice-records.ts";
import { failedByNow } from "./failed-by-now.ts";
import type { Exposures, FailedByNow } from "./failed-by-now.ts";
import { wearOf } from "./all-wear.ts";
import { pageOf } from "./wear-page.ts";
import type { PageRecords, WearRecords } from "./wear-records.ts";
import type { Wear, WearPage } from "./wear.ts";

/** What can be worked out from records already counted; each kind with what it needs and what it gives. */
export interface WearWork {
  wear: { records: WearRecords; answer: Wear };
  page: { records: PageRecords; answer: WearPage };
  advice: { records: AdviceRecords; answer: Advice };
  now: { records: { readonly records: AdviceRecords; readonly exposures: Exposures }; answer: readonly FailedByNow[] };
}
export type WearKind = keyof WearWork;
/** Does the work of one kind, here or in a worker. */
export type DoWork = <Kind extends WearKind>(kind: Kind, records: WearWork[Kind]["records"], means: WorkMeans) => Promise<WearWork[Kind]["answer"]>;

/** One piece of work as a worker is asked for it. */
export type AskedWear = { [Kind in WearKind]: { readonly kind: Kind; readonly records: WearWork[Kind]["records"] } }[WearKind];

const WORK: { [Kind in WearKind]: (records: WearWork[Kind]["records"], means: WorkMeans) => Promise<WearWork[Kind]["answer"]> } = { wear: wearOf, page: pageOf, advice: adviceOf, now: failedByNow };

/** The work on this thread: in Node, in tests, and in the worker itself. */
export const workHere: DoWork = (kind, records, means) => WORK[kind](records, means);

/** The worker's end of it. */
export const workAsked = ({ kind, records }: AskedWear, means: WorkMeans): Promise<unknown> => (WORK[kind] as PlainWork<unknown, unknown>)(records, means);
