import { laplaceTrend, pooledLewisRobinson, powerTrend } from "../../stats/trend-tests.ts";
import type { Line } from "../../stats/trend-tests.ts";
import type { FailureTrend } from "./comeback.ts";

/** Under so many failures a trend is not looked for. */
const FEWEST = 8;
const SURE = 0.05;

export const NO_TREND: FailureTrend = {
  events: 0, word: "too few", laplace: null, laplace_p: null, shape: null, shape_p: null, lewis_robinson: null,
};

/** Whether failures come faster or slower with age, in a word and its figures; both tests must say so. */
export function failureTrend(lines: readonly Line[]): FailureTrend {
  const events = lines.reduce((sum, line) => sum + line.events.length, 0);
  if (events === 0) return NO_TREND;
  const laplace = laplaceTrend(lines), power = powerTrend(lines), clumped = pooledLewisRobinson(lines);
  const figures = {
    events, laplace: laplace.statistic, laplace_p: laplace.p, shape: power.shape, shape_p: power.p, lewis_robinson: clumped.statistic,
  };
  if (events < FEWEST) return { ...figures, word: "too few" };
  const sure = laplace.p !== null && laplace.p < SURE && power.p !== null && power.p < SURE;
  const clear = clumped.p === null || clumped.p < SURE;
  return { ...figures, word: !sure || !clear ? "no trend" : (laplace.statistic ?? 0) > 0 ? "faster with age" : "slower with age" };
}
