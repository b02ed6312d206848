import type fc from "fast-check";
import type { Ledger } from "../../src/records/ledger/ledger.ts";

/** Interleavings tried for each claim. */
export const ORDERS = Number(process.env["SALTBENCH_ORDERS"] ?? 300);

/**
 * A store whose every step waits for its turn, before it is done and before its answer comes: the scheduler lets the steps of
 * all windows go on in any order.
 */
export function inAnyOrder<T extends object>(store: T, scheduler: fc.Scheduler, window: string): T {
  const slow = (name: string, work: (...given: unknown[]) => unknown) => async (...given: unknown[]) => {
    await scheduler.schedule(Promise.resolve(), `${window} asks ${name}`);
    const done = await work.apply(store, given);
    await scheduler.schedule(Promise.resolve(), `${window} hears of ${name}`);
    return done;
  };
  return Object.fromEntries(Object.entries(store).map(([name, one]: [string, unknown]) =>
    [name, typeof one === "function" && name !== "onChange" && name !== "close" ? slow(name, one as (...given: unknown[]) => unknown) : one])) as T;
}

/** Runs what several windows do at once, in every order the scheduler comes upon. */
export const allAtOnce = <T>(scheduler: fc.Scheduler, work: readonly Promise<T>[]): Promise<T[]> => scheduler.waitFor(Promise.all(work));

/** The ledger as it was before `changeSetting`: what is kept is read in one step and written in another. */
export function withoutTransaction(ledger: Ledger): Ledger {
  return { ...ledger, changeSetting: async (name, change) => {
    const now = change(await ledger.setting(name));
    await ledger.keepSetting(name, now);
    return now;
  } };
}
