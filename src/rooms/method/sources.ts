/** Who published a method, and the file of ours whose heading names it. */
export interface Source {
  readonly who: string;
  readonly year: number;
  readonly title: string;
  readonly where: string;
  /** Below `src`. */
  readonly file: string;
}

const source = (who: string, year: number, title: string, where: string, file: string): Source => ({ who, year, title, where, file });

/** Titles are written from memory; authors, years and pages stand in the files, where tests hold the methods to published cases. */
export const SOURCES = {
  range_of_share: source("Wilson", 1927, "Probable inference, the law of succession, and statistical inference", "Journal of the American Statistical Association 22:209–212", "stats/share-interval.ts"),
  small_counts: source("Brown, Cai & DasGupta", 2001, "Interval estimation for a binomial proportion", "Statistical Science 16:101–133", "stats/share-interval.ts"),
  drawn_in: source("Gelman", 2006, "Prior distributions for variance parameters in hierarchical models", "Bayesian Analysis 1:515–534", "stats/beta-binomial.ts"),
  thin_records: source("Morris", 1983, "Parametric empirical Bayes inference", "Journal of the American Statistical Association 78:47–55", "stats/beta-binomial.ts"),
  no_difference: source("Tarone", 1979, "Testing the goodness of fit of the binomial distribution", "Biometrika 66:585–590", "stats/beta-binomial.ts"),
  like_with_like: source("Mantel & Haenszel", 1959, "Statistical aspects of the analysis of data from retrospective studies of disease", "Journal of the National Cancer Institute 22:719–748", "stats/mantel-haenszel.ts"),
  many_looks: source("Benjamini & Hochberg", 1995, "Controlling the false discovery rate", "Journal of the Royal Statistical Society B 57:289–300", "stats/false-discovery.ts"),
  funnel: source("Spiegelhalter", 2005, "Funnel plots for comparing institutional performance", "Statistics in Medicine 24:1185–1202", "stats/funnel-limits.ts"),
  window: source("Kulldorff", 1997, "A spatial scan statistic", "Communications in Statistics 26:1481–1496", "stats/window-scan.ts"),
  later_failures: source("Nelson", 1995, "Confidence limits for recurrence data", "Technometrics 37:147–157", "stats/mean-cumulative.ts"),
  between_looks: source("Meeker & Escobar", 1998, "Statistical methods for reliability data", "Wiley", "stats/weibull-life.ts"),
  life_limits: source("Cox & Oakes", 1984, "Analysis of survival data", "Chapman and Hall", "stats/profile-limits.ts"),
  steps: source("Turnbull", 1976, "The empirical distribution function with arbitrarily grouped, censored and truncated data", "Journal of the Royal Statistical Society B 38:290–295", "stats/turnbull.ts"),
  grades: source("McCullagh", 1980, "Regression models for ordinal data", "Journal of the Royal Statistical Society B 42:109–142", "stats/proportional-odds.ts"),
  seldom_used: source("Croston", 1972, "Forecasting and stock control for intermittent demands", "Operational Research Quarterly 23:289–303", "stats/intermittent.ts"),
  seldom_corrected: source("Syntetos & Boylan", 2005, "The accuracy of intermittent demand estimates", "International Journal of Forecasting 21:303–314", "stats/intermittent.ts"),
  dying_out: source("Teunter, Syntetos & Babai", 2011, "Intermittent demand: linking forecasting to inventory obsolescence", "European Journal of Operational Research 214:606–615", "stats/intermittent.ts"),
  one_for_one: source("Feeney & Sherbrooke", 1966, "The (s–1, s) inventory policy under compound Poisson demand", "Management Science 12:391–411", "stats/stock-level.ts"),
  looking_back: source("Tashman", 2000, "Out-of-sample tests of forecasting accuracy", "International Journal of Forecasting 16:437–450", "stats/rolling-origin.ts"),
  score: source("Gneiting & Raftery", 2007, "Strictly proper scoring rules, prediction, and estimation", "Journal of the American Statistical Association 102:359–378", "stats/forecast-scores.ts"),
  scaled_miss: source("Hyndman & Koehler", 2006, "Another look at measures of forecast accuracy", "International Journal of Forecasting 22:679–688", "stats/forecast-scores.ts"),
  times: source("Olsson", 2005, "Confidence intervals for the mean of a log-normal distribution", "Journal of Statistics Education 13(1)", "stats/lognormal-summary.ts"),
  bad_day: source("Harrell & Davis", 1982, "A new distribution-free quantile estimator", "Biometrika 69:635–640", "stats/harrell-davis.ts"),
} as const satisfies Readonly<Record<string, Source>>;

export type SourceName = keyof typeof SOURCES;
