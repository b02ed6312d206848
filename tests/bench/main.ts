import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { loadavg } from "node:os";
import { dirname, resolve } from "node:path";
import { parseArgs } from "node:util";
import { ensureBuilt } from "../../src/commands/build.mjs";
import { findBrowser } from "../../src/commands/find-browser.mjs";
import { APP } from "../../src/commands/freshness.mjs";
import { closeAll } from "../browser/harness.ts";
import { answersAtSize } from "./answers-at-size.ts";
import { appAtSize } from "./app-at-size.ts";
import { sideBySide } from "./engines.ts";
import { failureTimes } from "./failures.ts";
import { FORMATS } from "./import-files.ts";
import { sheetTime } from "./import.ts";
import { importsAtSize } from "./imports-at-size.ts";
import { besideR } from "./in-r.ts";
import { sheet } from "./sheet.ts";
import { shopStreams } from "./shop-streams.ts";
import { sizes } from "./sizes.ts";
import { stockTimes } from "./stock.ts";
import { visits } from "./visits.ts";
import { wearTimes } from "./wear.ts";

const GROUPS = 500, SHEET = 20_000, MILLION = 1_000_000, INSPECTIONS = 1_000_000;
/** Findings to bring in from each format of file, and how often; each is grown to whole rounds of the demo. */
const IMPORTS: readonly (readonly [findings: number, runs: number])[] = [[20_000, 3], [200_000, 3], [MILLION, 1]];
/** Findings with which the demo, grown or cut, has ten thousand, a hundred thousand and a million inspections. */
const SIZES = [2_770, 27_700, 277_000], LARGEST = SIZES.at(-1) ?? 0;

async function repeat<T>(runs: number, what: string, measure: () => Promise<T>): Promise<T[]> {
  const all: T[] = [];
  for (let run = 1; run <= runs; run++) {
    all.push(await measure());
    console.log(`${what}, run ${run} of ${runs}: ${JSON.stringify(all.at(-1))}`);
  }
  return all;
}

/** Every format of file at each size. */
async function imports() {
  const all = [];
  for (const [findings, runs] of IMPORTS) for (const format of FORMATS) all.push(await importsAtSize(format, findings, runs));
  return all;
}

/** All answers at each size. */
async function growth() {
  const all = [];
  for (const findings of SIZES) all.push(await answersAtSize(await shopStreams(findings)));
  return all;
}

/**
 * Measures what an owner waits for and writes it down.
 *
 *     npm run bench -- [--runs 5] [--out bench/latest.md]
 *
 * @throws {RangeError} if `--runs` is not a whole number from 1 up
 */
export async function main(argv: string[]): Promise<number> {
  const { values } = parseArgs({ args: argv, options: { runs: { type: "string", default: "5" }, out: { type: "string", default: "bench/latest.md" } } });
  const runs = Number(values.runs);
  if (!Number.isInteger(runs) || runs < 1) throw new RangeError(`bench: --runs must be a whole number from 1 up, got ${values.runs}`);
  const load = loadavg()[0] ?? 0;
  await ensureBuilt();
  const { version, source } = findBrowser();
  try {
    const text = sheet({
      day: new Date().toISOString().slice(0, 10), browser: `Chromium ${version} (${source})`, load,
      visits: await repeat(runs, "Visits", visits), sizes: sizes(APP),
      sheets: await repeat(runs, "Sheet", () => sheetTime(SHEET)), imports: await imports(),
      failures: await repeat(runs, "Failures", () => failureTimes(INSPECTIONS)),
      wear: await repeat(runs, "Wear", () => wearTimes(INSPECTIONS)),
      stock: await repeat(runs, "Stock", () => stockTimes(GROUPS)),
      growth: await growth(), engines: await sideBySide(await shopStreams(LARGEST), runs), in_r: besideR(),
      apps: [await appAtSize(LARGEST), await appAtSize(MILLION)],
    });
    mkdirSync(dirname(resolve(values.out)), { recursive: true });
    const whole = `${text}\n${readFileSync("bench/why-missed.md", "utf8")}`;
    writeFileSync(resolve(values.out), whole);
    console.log(`\n${whole}`);
  } finally {
    await closeAll();
  }
  return 0;
}
