import { drawWeibull } from "../src/stats/draws.ts";
import { lifeAt } from "../src/stats/life-figures.ts";
import type { LifeLine } from "../src/stats/life-lines.ts";
import { seededRandom } from "../src/stats/random.ts";
import type { Random } from "../src/stats/random.ts";
import { hasCurve, weibullLife } from "../src/stats/weibull-life.ts";

/**
 * Do the limits of B10 hold what they promise? Parts with a Weibull life, each looked at once after a time of its own, as a bench does.
 *
 * Profile likelihood (Cox & Oakes 1984) against the usual estimate plus or minus 1.96 standard errors on the log scale. Run it with
 * `npm run notebook -- notebooks/life-limits-coverage.ts`.
 */
const SHAPE = 1.7, SCALE = 100, TRUTH = SCALE * (-Math.log1p(-0.1)) ** (1 / SHAPE), SHOPS = 5000, SIZES = [20, 40, 160];

function lookedAtOnce(parts: number, random: Random): LifeLine[] {
  return Array.from({ length: parts }, () => {
    const life = drawWeibull(random, SHAPE, SCALE), seen = 10 + 140 * random();
    return life <= seen ? { low: 0, high: seen } : { low: seen, high: Infinity };
  });
}

interface Tally { fitted: number; separated: number; profile: number; below: number; above: number; wald: number; one_sided: number }

function tallyOf(parts: number): Tally {
  const random = seededRandom(parts), tally: Tally = { fitted: 0, separated: 0, profile: 0, below: 0, above: 0, wald: 0, one_sided: 0 };
  for (let shop = 0; shop < SHOPS; shop += 1) {
    const fit = weibullLife(lookedAtOnce(parts, random));
    if (!hasCurve(fit)) continue;
    if (fit.status === "separated") tally.separated += 1;
    const { value, low, high } = lifeAt(fit, 0.1), [a = 0] = fit.theta, k = Math.log(-Math.log1p(-0.1)), slopes = [-1 / fit.shape, -(k - a) / fit.shape ** 2];
    const square = slopes.reduce((sum, one, i) => sum + slopes.reduce((inner, other, j) => inner + one * other * fit.covariance.get(i, j), 0), 0);
    tally.fitted += 1;
    if (low !== null && low > TRUTH) tally.below += 1;
    else if (high !== null && high < TRUTH) tally.above += 1;
    else tally.profile += 1;
    if (low === null || high === null) tally.one_sided += 1;
    if (Math.abs(Math.log(value / TRUTH)) <= 1.96 * Math.sqrt(square)) tally.wald += 1;
  }
  return tally;
}

const share = (some: number, of: number) => (some / of).toFixed(3);

function line(parts: number): string {
  const { fitted, separated, profile, below, above, wald, one_sided } = tallyOf(parts), covered = profile / fitted, margin = 1.96 * Math.sqrt((covered * (1 - covered)) / fitted);
  const verdict = covered >= 0.93 && covered <= 0.97 ? "as promised" : covered - margin <= 0.97 && covered + margin >= 0.93 ? "as promised, as far as so many shops can tell" : "not as promised";
  return `| ${parts} | ${fitted} | ${separated} | ${share(profile, fitted)} ± ${margin.toFixed(3)} | ${share(below, fitted)} | ${share(above, fitted)} | ${share(wald, fitted)} | ${one_sided} | ${verdict} |`;
}

export async function notebook(): Promise<string> {
  return [
    "# Do the limits of B10 hold what they promise?",
    "",
    `${SHOPS} invented shops of each size; lives with shape ${SHAPE} and scale ${SCALE} days (true B10 ${TRUTH.toFixed(1)} days), each part looked at once between 10 and 150 days.`,
    "The 95 % limits should hold the truth in 93 to 97 of 100 shops.",
    "",
    "| parts | with a curve | separated | profile limits hold it | limits too high | limits too low | estimate ± 1.96 se | without an end | verdict |",
    "| --- | --- | --- | --- | --- | --- | --- | --- | --- |",
    ...SIZES.map(line),
    "",
    "Where the failures are separated a weak prior on the shape (median 1.5) takes part, and where a limit has no end it is shown as open.",
    "",
  ].join("\n");
}

export async function main(): Promise<number> {
  process.stdout.write(`${await notebook()}\n`);
  return 0;
}
