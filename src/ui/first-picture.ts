const MARK = "saltbench:first-picture";
/** Some rooms have no picture. */
const LONGEST_WAIT = 12_000;

let stands = (): void => undefined;
const standing = new Promise<void>((done) => (stands = done));

/** Marks, once in the life of the page, that the first answer stands on the screen; the bench and tests read the mark. */
export function firstPicture(): void {
  if (performance.getEntriesByName(MARK).length === 0) performance.mark(MARK);
  stands();
}

/** For what must not take time from the first picture: resolves when it stands and the page has nothing to do, or after a while without one. */
export async function afterFirstPicture(): Promise<void> {
  await Promise.race([standing, new Promise((done) => setTimeout(done, LONGEST_WAIT))]);
  await new Promise<void>((done) => ("requestIdleCallback" in globalThis ? requestIdleCallback(() => done(), { timeout: 3_000 }) : setTimeout(done, 500)));
}

/** Marks, once, that what was kept from the last time stands on the screen while the records are being read. */
export function keptPicture(): void {
  if (performance.getEntriesByName("saltbench:kept-picture").length === 0) performance.mark("saltbench:kept-picture");
}
