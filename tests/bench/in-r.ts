import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { countRegression } from "../../src/stats/count-regression.ts";
import { seededRandom } from "../../src/stats/random.ts";
import { weibullLife } from "../../src/stats/weibull-life.ts";
import { median } from "./median.ts";

/** The same fit by our own code and by R; milliseconds, and the log-likelihood each reached. */
export interface FitBeside { readonly what: string; readonly ours: number; readonly r: number; readonly value: number; readonly r_value: number }

const LINES = 5000, RUNS = 5;

/** Parts looked at twice at most, some failed in between: shape 1.8, and one condition that halves the life. */
function lives() {
  const random = seededRandom(7);
  return Array.from({ length: LINES }, () => {
    const hard = random() < 0.5 ? 1 : 0, life = (hard ? 40 : 80) * (-Math.log(1 - random())) ** (1 / 1.8), seen = 5 + 60 * random(), again = seen + 30 * random();
    const [low, high] = life < seen ? [0, seen] : life < again ? [seen, again] : [again, Infinity];
    return { low, high, x: [hard] };
  });
}

function weeks() {
  const random = seededRandom(11);
  return Array.from({ length: LINES }, (_, i) => {
    const x = [1, Math.cos(i / 8), Math.sin(i / 8)], mean = Math.exp(2 + 0.5 * (x[1] as number) - 0.3 * (x[2] as number));
    let count = 0;
    for (let left = Math.exp(-mean) , product = random(); product > left; product *= random()) count += 1;
    return { x, count };
  });
}

function timed<T>(work: () => T): { took: number; value: T } {
  const times: number[] = [];
  let value = work();
  for (let run = 0; run < RUNS; run += 1) {
    const began = performance.now();
    value = work();
    times.push(performance.now() - began);
  }
  return { took: median(times), value };
}

const SCRIPT = `
suppressMessages(library(survival))
args <- commandArgs(TRUE)
l <- read.csv(args[1]); w <- read.csv(args[2])
timed <- function(f) { f(); t <- sapply(1:${RUNS}, function(i) { b <- proc.time()[["elapsed"]]; for (k in 1:5) f(); (proc.time()[["elapsed"]] - b) * 200 }); median(t) }
life <- function() survreg(Surv(lo, hi, type = "interval2") ~ x, data = l, dist = "weibull", control = survreg.control(rel.tolerance = 1e-10))
count <- function() glm(count ~ c + s, family = poisson, data = w)
cat(timed(life), format(as.numeric(logLik(life())), digits = 15), timed(count), format(as.numeric(logLik(count())), digits = 15), R.version.string, sep = "\\n")
`;

/**
 * Fits a Weibull life to parts seen now and then, and a count regression, here and in R (`survreg`, `glm`).
 *
 * @returns null where there is no R with its package survival
 * @throws {Error} when the two log-likelihoods are not the same to six digits
 */
export function besideR(): { version: string; fits: FitBeside[] } | null {
  const home = mkdtempSync(join(tmpdir(), "saltbench-r-")), some = lives(), counted = weeks();
  try {
    writeFileSync(join(home, "lives.csv"), ["lo,hi,x", ...some.map(({ low, high, x }) => `${low === 0 ? "NA" : low},${high === Infinity ? "NA" : high},${x[0]}`)].join("\n"));
    writeFileSync(join(home, "weeks.csv"), ["count,c,s", ...counted.map(({ x, count }) => `${count},${x[1]},${x[2]}`)].join("\n"));
    writeFileSync(join(home, "fits.R"), SCRIPT);
    const { status, stdout } = spawnSync("Rscript", ["--vanilla", "fits.R", "lives.csv", "weeks.csv"], { cwd: home, encoding: "utf8" });
    if (status !== 0) return null;
    const [r_life = NaN, life_value = NaN, r_count = NaN, count_value = NaN] = stdout.split("\n").map(Number), version = stdout.trim().split("\n").at(-1) ?? "R";
    const life = timed(() => weibullLife(some)), count = timed(() => countRegression(counted, Infinity));
    const fits = [
      { what: `Weibull life of ${LINES.toLocaleString("en")} parts seen now and then, one condition`, ours: life.took, r: r_life, value: "logLikelihood" in life.value ? life.value.logLikelihood : NaN, r_value: life_value },
      { what: `Poisson regression of ${LINES.toLocaleString("en")} counts on two waves`, ours: count.took, r: r_count, value: count.value.logLikelihood, r_value: count_value },
    ];
    for (const { what, value, r_value } of fits) if (!(Math.abs(value - r_value) < 1e-6 * Math.abs(r_value))) throw new Error(`${what}: ${value} here, ${r_value} in R.`);
    return { version, fits };
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}
