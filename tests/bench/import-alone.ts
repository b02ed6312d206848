import { importTime } from "./import.ts";

/**
 * Imports files that hold so many findings once and writes the time and the memory it took as JSON.
 *
 *     node src/commands/run-ts.mjs tests/bench/import-alone.ts FINDINGS PATH…
 */
export async function main([findings = "", ...paths]: string[]): Promise<number> {
  if (!/^[1-9]\d*$/.test(findings)) throw new RangeError(`import-alone: needs a number of findings, got ${findings}`);
  console.log(JSON.stringify(await importTime(paths, Number(findings))));
  return 0;
}
