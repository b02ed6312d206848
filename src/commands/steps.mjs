import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROOT } from "./root.mjs";

/**
 * @typedef {object} Step
 * @property {string} name the word for `--only`
 * @property {string} title
 * @property {(scratch: string) => [string, ...string[]]} command program and arguments; `scratch` is a folder of its own
 * @property {boolean} [counts_tests] Vitest, which leaves its counts in `scratch`
 *
 * @typedef {{ passed: number, failed: number, note?: string, failures?: readonly string[] }} Verdict `failures`: name and reason of each failed test
 * @typedef {Verdict & { title: string, seconds: number }} Outcome
 */

const bin = (/** @type {string} */ name) => join(ROOT, "node_modules/.bin", name);
const REPORT = "vitest.json";

/**
 * @param {string} project
 * @returns {Step["command"]}
 */
const vitest = (project) => (scratch) =>
  [bin("vitest"), "run", "--project", project, "--reporter=default", "--reporter=json", `--outputFile.json=${join(scratch, REPORT)}`];

/** @type {readonly Step[]} what `npm test` does, in order; the browser tests need the build */
export const STEPS = [
  { name: "types", title: "Types", command: () => [bin("tsc"), "--noEmit"] },
  { name: "svelte", title: "Components", command: () => [bin("svelte-check"), "--tsconfig", "./tsconfig.json", "--fail-on-warnings"] },
  { name: "lint", title: "Lint", command: () => [bin("eslint"), "."] },
  { name: "unit", title: "Tests in Node: layers, units, engine, properties", command: vitest("unit"), counts_tests: true },
  { name: "build", title: "Build", command: () => [process.execPath, join(ROOT, "src/commands/build.mjs")] },
  { name: "browser", title: "Tests in a real browser", command: vitest("browser"), counts_tests: true },
];

/**
 * Counts a Vitest run. A test that was passed over counts as failed, and so does a run that broke outside its tests or
 * found none.
 *
 * @param {string | null} report Vitest's JSON, or null when it left none
 * @param {number} code Vitest's exit code
 * @returns {Verdict}
 */
export function countTests(report, code) {
  if (report === null) return { passed: 0, failed: 1, note: "Vitest left no counts" };
  const { numPassedTests, numFailedTests, numTotalTests, testResults } = JSON.parse(report);
  const missed = numTotalTests - numPassedTests - numFailedTests;
  const broken = testResults.filter(isBroken).length;
  const failed = numFailedTests + missed + broken;
  const notes = [missed > 0 && `${missed} did not run`, broken > 0 && `${broken} broken outside its tests`].filter((note) => note !== false);
  if (failed === 0 && (code !== 0 || numTotalTests === 0)) return { passed: numPassedTests, failed: 1, note: "broken outside its tests" };
  const failures = testResults.flatMap(failuresOf);
  return { passed: numPassedTests, failed, ...(notes.length > 0 && { note: notes.join(", ") }), ...(failures.length > 0 && { failures }) };
}

/**
 * @param {{ assertionResults: { status: string, fullName?: string, failureMessages?: string[] }[] }} file
 * @returns {string[]} a line each
 */
const failuresOf = ({ assertionResults }) => assertionResults.filter(({ status }) => status === "failed")
  .map(({ fullName = "", failureMessages = [] }) => `${fullName}: ${(failureMessages[0] ?? "").split("\n").slice(0, 3).join(" ").slice(0, 300)}`);

/**
 * A test file that failed though none of its tests did: it could not be loaded, or a hook of it threw.
 *
 * @param {{ status: string, assertionResults: { status: string }[] }} file
 */
const isBroken = ({ status, assertionResults }) => status === "failed" && !assertionResults.some((each) => each.status === "failed");

/**
 * @param {readonly string[]} command
 * @returns {Promise<number>} the exit code; 1 for a program that a signal ended or that cannot be run
 */
function exitCode([program = "", ...args]) {
  return new Promise((done) => {
    const child = spawn(program, args, { cwd: ROOT, stdio: ["ignore", "inherit", "inherit"] });
    child.on("error", (error) => { console.error(error.message); done(1); });
    child.on("close", (code) => done(code ?? 1));
  });
}

/**
 * Runs one step under its heading and says how it went.
 *
 * @param {Step} step
 * @returns {Promise<Outcome>}
 */
export async function runStep(step) {
  console.log(`\n=== ${step.title} ===`);
  const began = performance.now();
  const scratch = mkdtempSync(join(tmpdir(), "saltbench-step-"));
  const code = await exitCode(step.command(scratch));
  const report = join(scratch, REPORT);
  const verdict = step.counts_tests
    ? countTests(existsSync(report) ? readFileSync(report, "utf8") : null, code)
    : { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1 };
  rmSync(scratch, { recursive: true });
  return tell({ title: step.title, seconds: (performance.now() - began) / 1000, ...verdict });
}

/**
 * @param {Outcome} outcome
 * @returns {Outcome} the same
 */
export function tell(outcome) {
  console.log(`--- ${line(outcome)}`);
  return outcome;
}

/** @param {Outcome} outcome */
const line = ({ title, seconds, passed, failed, note }) =>
  `${failed === 0 ? "ok    " : "FAILED"} ${title}: ${passed} passed, ${failed} failed${note ? ` (${note})` : ""}, ${seconds.toFixed(1)} s`;

/**
 * Writes the summary, whose last line is `N passed, N failed`.
 *
 * @param {readonly Outcome[]} outcomes
 * @returns {number} the exit code: 1 when anything failed or nothing ran
 */
export function summary(outcomes) {
  const sum = (/** @type {"passed" | "failed"} */ key) => outcomes.reduce((total, outcome) => total + outcome[key], 0);
  const lines = outcomes.flatMap((outcome) => [line(outcome), ...(outcome.failures ?? []).map((failure) => `       ${failure}`)]);
  console.log(`\n=== Summary ===\n${lines.join("\n")}\n${sum("passed")} passed, ${sum("failed")} failed`);
  return sum("failed") === 0 && sum("passed") > 0 ? 0 : 1;
}

/**
 * @param {readonly string[]} argv `--only unit,browser` runs some of the steps
 * @returns {readonly Step[]}
 * @throws {RangeError} for a step that does not exist, or another argument
 */
export function chosenSteps(argv) {
  if (argv.length === 0) return STEPS;
  const names = argv[0] === "--only" && argv.length === 2 ? argv[1]?.split(",") ?? [] : [];
  const known = STEPS.map(({ name }) => name);
  if (names.length === 0 || names.some((name) => !known.includes(name))) {
    throw new RangeError(`chosenSteps: arguments must be --only with some of ${known.join(",")}, got ${argv.join(" ")}`);
  }
  return STEPS.filter(({ name }) => names.includes(name));
}
