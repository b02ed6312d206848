import type { PlainWork, WorkMeans } from "../worker-work.ts";
import type { BenchLoad, Changed } from "./bench-load.ts";
import { unpackedBench } from "./bench-records.ts";
import type { PackedBench } from "./bench-records.ts";
import { benchLoadOf, changedLoadOf } from "./weeks-ahead.ts";
import type { WhatIf } from "./what-if.ts";

/** What can be worked out from records already counted; each kind with what it needs and what it gives. */
export interface BenchWork {
  load: { records: PackedBench; answer: BenchLoad };
  change: { records: { records: PackedBench; load: BenchLoad; what: WhatIf; currency: string }; answer: Changed };
}
export type BenchKind = keyof BenchWork;
/** Does the work of one kind, here or in a worker. */
export type DoBenchWork = <Kind extends BenchKind>(kind: Kind, records: BenchWork[Kind]["records"], means: WorkMeans) => Promise<BenchWork[Kind]["answer"]>;

/** One piece of work as a worker is asked for it. */
export type AskedBench = { [Kind in BenchKind]: { readonly kind: Kind; readonly records: BenchWork[Kind]["records"] } }[BenchKind];

const WORK: { [Kind in BenchKind]: (records: BenchWork[Kind]["records"], means: WorkMeans) => Promise<BenchWork[Kind]["answer"]> } = {
  load: (records, means) => benchLoadOf(unpackedBench(records), means),
  change: ({ records, ...rest }, means) => changedLoadOf({ records: unpackedBench(records), ...rest }, means),
};

/** The work on this thread: in Node, in tests, and in the worker itself. */
export const workHere: DoBenchWork = (kind, records, means) => WORK[kind](records, means);

/** The worker's end of it. */
export const workAsked = ({ kind, records }: AskedBench, means: WorkMeans): Promise<unknown> => (WORK[kind] as PlainWork<unknown, unknown>)(records, means);
