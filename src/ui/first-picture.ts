const MARK = "saltbench:first-picture";
/** Some rooms have no picture. */
const LONGEST_WAIT = 12_000;

let stands = (): void => undefined;
const standing = new Promise<void>((done) => (stands = done));

/** Marks, once in the life of the page, that the first answer stands on the screen; the bench and tests read the mark. */
export function firstPicture(): void {
  markOnce(MARK);
  stands();
}

/** For what must not take time from the first picture: resolves when it stands and the page has nothing to do, or after a while without one. */
export async function afterFirstPicture(): Promise<void> {
  await Promise.race([standing, new Promise((done) => setTimeout(done, LONGEST_WAIT))]);
  await new Promise<void>((done) => ("requestIdleCallback" in globalThis ? requestIdleCallback(() => done(), { timeout: 3_000 }) : setTimeout(done, 500)));
}

const markOnce = (name: string): void => {
  if (performance.getEntriesByName(name).length === 0) performance.mark(name);
};

/**
 * Marks, once, that what was kept from the last time stands on the screen while the records are being read.
 *
 * @param todays whether it is what would be worked out now
 */
export function keptPicture(todays: boolean): void {
  markOnce("saltbench:kept-picture");
  if (todays) markOnce("saltbench:todays-picture");
}
