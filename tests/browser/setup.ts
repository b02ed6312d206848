import { findBrowser } from "../../src/commands/find-browser.mjs";

/** Finds, and if need be fetches, the browser once before the first test: that may take longer than any test should. */
export function setup(): void {
  const { path, version, source } = findBrowser();
  process.stderr.write(`Browser for the tests: ${path} (${source}, version ${version})\n`);
}
