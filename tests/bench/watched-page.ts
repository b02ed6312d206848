import type { Page } from "playwright-core";

/** Milliseconds until the first chart or table is another, and until nothing on the page changes or is busy any more. */
export interface Changed { readonly first: number | null; readonly whole: number }

declare global {
  var benchWatch: { longest(): number; forget(): void; settled(act: () => void, patience: number, moves?: boolean): Promise<Changed> };
}

/** Puts the bench's watch into every page of a context: long tasks, and how long an answer takes to change. */
export async function watchPage(page: Page): Promise<void> {
  await page.addInitScript(() => {
    let longest = 0;
    new PerformanceObserver((list) => { for (const { duration } of list.getEntries()) longest = Math.max(longest, duration); }).observe({ type: "longtask", buffered: true });
    const busy = () => document.querySelector("main [aria-busy='true'], main progress") !== null;
    const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
    globalThis.benchWatch = {
      longest: () => longest,
      forget: () => { longest = 0; },
      settled: async (act, patience, moves = false) => {
        const main = document.querySelector("main"), began = performance.now();
        let first: number | null = null, last = began;
        const note = (changes: readonly MutationRecord[]) => {
          const near = (node: Node) => (node instanceof Element ? node : node.parentElement);
          if (!changes.some(({ target }) => near(target)?.closest(".answer, .parts"))) return;
          last = performance.now();
          if (changes.some(({ target }) => near(target)?.closest(".chart, tbody"))) first ??= last;
        };
        const seen = new MutationObserver(note);
        if (main) seen.observe(main, { subtree: true, childList: true, characterData: true });
        const heading = () => document.querySelector("main h1")?.textContent, left = heading();
        act();
        while (moves && heading() === left && performance.now() - began < patience) await frame();
        // An answer that is asked after another makes the page busy again at once.
        for (let idle = 0; idle < 6 && performance.now() - began < patience;) { await frame(); idle = busy() ? 0 : idle + 1; }
        seen.disconnect();
        return { first: first === null ? null : first - began, whole: last - began };
      },
    };
  });
}
