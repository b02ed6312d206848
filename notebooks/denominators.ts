import { EVERYTHING } from "../src/answers/filter.ts";
import type { Opening } from "../src/answers/filter.ts";
import type { FailureRate } from "../src/answers/failures/failure-rate.ts";
import { failureRates } from "../src/answers/failures/failure-rates.ts";
import type { Engine } from "../src/db/engine.ts";
import { shareInterval } from "../src/stats/share-interval.ts";
import { number } from "../src/ui/format.ts";
import { readCase } from "../tests/reference/read-case.ts";
import type { Demo } from "./binding/demo.ts";
import { BOARD, picture, sources, table, text, told } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";
import { rangesChart } from "./binding/ranges-chart.ts";
import type { Ranged } from "./binding/ranges-chart.ts";

/** Of how many? One part of the demo shop over five denominators, and published counts from few to many. */
const POSITION = "line_roller_bearing";
const whole = (value: number) => number(value, 0, BOARD.locale);

/** Failed among so many, in per cent with its range. */
function share(name: string, failed: number, of: number): Ranged {
  const [low, high] = shareInterval(failed, of);
  return { name, value: (100 * failed) / of, low: 100 * low, high: 100 * high, counts: `${whole(failed)} of ${whole(of)}` };
}

const row = ({ name, value, low, high, counts }: Ranged) => [name, counts, `${value.toFixed(0)} %`, `${(low ?? 0).toFixed(0)} to ${(high ?? 100).toFixed(0)} %`];

async function counted(engine: Engine, opening: Opening, denominator: "coverage" | "strict"): Promise<FailureRate> {
  const rows = await failureRates(engine, { ...EVERYTHING, opening, denominator, group: null, position: POSITION });
  const all = rows.find(({ model }) => model === "*");
  if (!all) throw new RangeError(`denominators: needs a row for all models at ${POSITION}`);
  return all;
}

async function demoShares(engine: Engine): Promise<{ name: string; shares: Ranged[] }> {
  const counts = await engine.rows<{ tickets: number }>("-- How many tickets are there?\n-- Columns: tickets bigint\nselect count(*) as tickets from visits order by tickets");
  const any = await counted(engine, "*", "coverage"), strict = await counted(engine, "*", "strict");
  const planned = await counted(engine, "planned", "coverage"), complaint = await counted(engine, "complaint", "coverage");
  return {
    name: any.position_name.toLowerCase(),
    shares: [
      share("all tickets", any.failed, counts[0]?.tickets ?? 0), share("times it was written about", strict.failed, strict.inspected),
      share("times the job opened it", any.failed, any.inspected), share("opened, planned services", planned.failed, planned.inspected),
      share("opened, came in with a fault", complaint.failed, complaint.inspected),
    ],
  };
}

/** Herds of cattle in which some fell ill, the smallest first. */
const herds = (): Ranged[] => readCase("01-intervals/binomial").rows.filter(({ label = "" }) => label.startsWith("herd"))
  .map(({ label = "", x, n }) => ({ label, failed: Number(x), of: Number(n) })).sort((one, other) => one.of - other.of).map(({ label, failed, of }) => share(label.replace("herd", "herd "), failed, of));

/** From where to where, in words. */
const between = ({ low, high }: Ranged) => `${(low ?? 0).toFixed(0)} to ${(high ?? 100).toFixed(0)} per cent`;

export async function notebook(demo: Demo): Promise<readonly Piece[]> {
  const { name, shares } = await demoShares(await demo.engine()), list = herds(), smallest = list.at(0) as Ranged, largest = list.at(-1) as Ranged;
  return [
    text("# Of how many?", "", `How often does the ${name} fail? In the first three lines the failures are nearly the same ones; what they are divided by is not.`),
    table(["divided by", "failed, of", "share:", "plausibly:"], shares.map(row)),
    picture("One part, five answers", `Share of the ${name} that failed, divided by five different numbers, with the range each share plausibly lies in.`, rangesChart({ rows: shares, axis: "share failed, per cent" }, BOARD)),
    text(
      "**All tickets are too many:** a drag job does not look at the line roller, so those reels say nothing about it. **What was written is too few:** what was fine",
      "is seldom written down. The app counts the times the job opened the place (the third line), and shows what was written beside it.", "",
      "**The last two lines are why they are shown apart.** A reel that comes in with a squealing roller was chosen by its fault. A year with more quick jobs would look",
      "like a year with worse bearings. Models are compared on planned services, where nobody was chosen by the part in question."),
    text("## How much a few can say", "",
      `The range beside a share is Wilson's: where the true share plausibly lies. ${list.length} herds of cattle were watched for an illness of the lungs, and here is the share that fell ill, fewest animals first.`),
    picture("Few animals, wide ranges", `Share of each of ${list.length} herds that fell ill, with its range, herds in the order of their size.`, rangesChart({ rows: list, axis: "share that fell ill, per cent" }, BOARD)),
    text(
      `In the smallest, ${smallest.counts} fell ill, so the true share may plausibly be anything from ${between(smallest)}; in the largest, ${largest.counts}, from ${between(largest)}. ` +
      `A bench has fewer of most models: one failure in two looked at gives ${between(share("", 1, 2))}, ten in twenty ${between(share("", 10, 20))}. So under ten looked at the app shows the counts and no percentage, and never a share without its range.`),
    sources(
      "The range: Wilson (1927), Journal of the American Statistical Association 22:209–212; recommended for small counts by Brown, Cai & DasGupta (2001), Statistical Science 16:101–133. `src/stats/share-interval.ts`.",
      "The herds: Lesnoff and others (2004), Preventive Veterinary Medicine 64:9–23, data frame cbpp of the R package lme4; in `tests/reference/01-intervals/binomial`, with R's own ranges, which a test compares.",
      "Which job opens which place: `data/vocabulary/coverage.csv`."),
  ];
}

export const main = (): Promise<number> => told(notebook);
