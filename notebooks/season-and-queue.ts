import { NO_HOURS } from "../src/answers/bench-load/bench-hours.ts";
import type { BenchLoad } from "../src/answers/bench-load/bench-load.ts";
import { benchRecords } from "../src/answers/bench-load/bench-records.ts";
import type { BenchRecords } from "../src/answers/bench-load/bench-records.ts";
import { benchLoadOf, changedLoadOf } from "../src/answers/bench-load/weeks-ahead.ts";
import { NO_CHANGE } from "../src/answers/bench-load/what-if.ts";
import type { WhatIf } from "../src/answers/bench-load/what-if.ts";
import { emptyLine, inShop, workOff } from "../src/answers/bench-load/queue.ts";
import { dayAfter } from "../src/answers/days.ts";
import { NO_RATES } from "../src/answers/labour/bench-rates.ts";
import type { DayCount } from "../src/answers/season/open-days.ts";
import { seasonOf } from "../src/answers/season/season-forecast.ts";
import { reelsChart, waitChart } from "../src/rooms/season/load-chart.ts";
import { keptSentence } from "../src/rooms/season/season-words.ts";
import { drawLogNormal, drawPoisson } from "../src/stats/draws.ts";
import { seededRandom } from "../src/stats/random.ts";
import { shareInterval } from "../src/stats/share-interval.ts";
import { readRows } from "../tests/reference/read-case.ts";
import { cameChart } from "./binding/came-chart.ts";
import type { Came } from "./binding/came-chart.ts";
import { TODAY } from "./binding/demo.ts";
import type { Demo } from "./binding/demo.ts";
import { BOARD, picture, sources, table, text, told } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";
import { rangesChart } from "./binding/ranges-chart.ts";
import type { Ranged } from "./binding/ranges-chart.ts";

/** How many reels will come, and what date can be promised? A published weekly series first, then the demo shop's bench. */
const AHEAD = 13, LAST_DAY = "1995-12-24", YEAR_WEEKS = 52;

/** Reports of one illness in England and Wales, six years, written as reels that come in. */
function reports(): DayCount[] {
  const by = new Map<string, number>();
  for (const { date_in = "" } of readRows("15-records/weekly-intake/data.csv")) by.set(date_in, (by.get(date_in) ?? 0) + 1);
  return [...by].map(([day, tickets]) => ({ day, tickets })).sort((one, other) => (one.day < other.day ? -1 : 1));
}

const sumIn = (days: readonly DayCount[], monday: string) => days.reduce((sum, { day, tickets }) => (day >= monday && day < dayAfter(monday, 7) ? sum + tickets : sum), 0);

/** The last year told a quarter at a time, each from what was known then, beside what came and what came a year before. */
function lastYear(days: readonly DayCount[]): Came[] {
  return [4, 3, 2, 1].flatMap((quarter) => {
    const as_of = dayAfter(LAST_DAY, -7 * AHEAD * quarter), { ahead } = seasonOf({ days: days.filter(({ day }) => day <= as_of), as_of, closures: [], weeks: AHEAD });
    return ahead.map(({ monday, tickets, low, high }) => ({ monday, expected: tickets, low, high, came: sumIn(days, monday), year_before: sumIn(days, dayAfter(monday, -7 * YEAR_WEEKS)) }));
  });
}

const off = (weeks: readonly Came[], said: (week: Came) => number) => weeks.reduce((sum, week) => sum + Math.abs(week.came - said(week)), 0) / weeks.length;

function published(): Piece[] {
  const weeks = lastYear(reports()), inside = weeks.filter(({ came, low, high }) => came >= low && came <= high).length;
  return [
    text("## On a published series", "",
      `Weekly reports of one illness from 1990 on. The last ${weeks.length} weeks are told a quarter at a time, each quarter from what was known on its first day. The range should hold eight weeks in ten: it held ${inside} of ${weeks.length}. ` +
      `On average the forecast was ${off(weeks, ({ expected }) => expected).toFixed(1)} a week off, “the same as last year” ${off(weeks, ({ year_before }) => year_before).toFixed(1)}.`),
    picture("Told, and come", "Reports a week: the range told beforehand, what was expected, and what came, a cross where it lay outside the range.", cameChart(weeks, "reports a week", BOARD)),
    text("Which way to look ahead is chosen anew each time, by which would have done best on the weeks known by then; the width of the range is how far that way has missed."),
  ];
}

const share = (name: string, kept: number, of: number): Ranged => {
  const [low, high] = shareInterval(kept, of);
  return { name, value: (100 * kept) / of, low: 100 * low, high: 100 * high, counts: `${kept} of ${of}` };
};

function promised({ kept }: BenchLoad): Piece[] {
  if (kept === null) throw new RangeError("season-and-queue: needs promises to look back at");
  return [
    text("## What date to promise", "",
      "A reel taken in today comes after what is in the shop, takes its own time, and waits if a part is missing. All of it is played through a thousand times with this shop's own minutes and waits; the date named is the one that eight in ten keep.",
      `Over the last year, each reel from what was in the shop that day: ${keptSentence({ kept }, BOARD.locale)}`),
    picture("Promises kept", "Share of the last year's reels ready by the date, with the range, for dates worked out and for two weeks for everything, beside the eight in ten asked for.",
      rangesChart({ rows: [share("dates as worked out", kept.kept, kept.n), share("two weeks for everything", kept.two_weeks, kept.n)], axis: "kept, per cent", beside: { at: 80, name: "asked for" } }, BOARD)),
  ];
}

const WHAT_IFS: readonly (readonly [string, Partial<WhatIf>])[] = [
  ["ten more hours a week in April and May", { help: { from: "2026-04-01", to: "2026-05-31", hours_a_week: 10 } as WhatIf["help"] }],
  ["closed the first two weeks of May", { closed: { from: "2026-05-04", to: "2026-05-17" } }],
  ["an offer brings one in four planned services in before the rush", { offer_share: 0.25 }],
];

/** The worst wait of the weeks ahead, and what each change does to it. */
async function whatIfs(records: BenchRecords, load: BenchLoad): Promise<Piece[]> {
  const worst = (weeks: BenchLoad["weeks"]) => weeks.reduce((most, { wait }) => Math.max(most, wait?.most ?? 0), 0), rows = [["as it stands", worst(load.weeks).toFixed(0), ""]];
  let drawn: SVGElement | HTMLElement | null = null;
  for (const [name, change] of WHAT_IFS) {
    const changed = await changedLoadOf({ records, load, what: { ...NO_CHANGE, ...change }, currency: "cu" });
    rows.push([name, worst(changed.weeks).toFixed(0), changed.text.join(" ")]);
    drawn ??= waitChart(changed.weeks, BOARD, load.weeks);
  }
  return [
    text("## What if"), table(["change", "days until 8 of 10 are ready, in the worst week:", "what it does"], rows),
    picture("Ten more hours a week in April and May", "Days until a reel that comes in that week is ready, with the help and as it stands.", drawn),
  ];
}

/** The bench's line on jobs drawn at random: reels in the shop must be reels a day times days each stays (Little 1961). */
function littlesLaw(days = 3000): string {
  const random = seededRandom(5), line = emptyLine(days * 12);
  let count = 0;
  for (let day = 0; day < days - 400; day += 1) for (let left = drawPoisson(random, 3); left > 0; left -= 1) { line.arrives[count] = day; line.minutes[count] = drawLogNormal(random, Math.log(90), 0.5); count += 1; }
  const jobs = { ...line, count }, ready = new Float64Array(count);
  workOff(new Float64Array(days).fill(330), jobs, ready, new Float64Array(days));
  const inside = inShop(days, jobs, ready).reduce((sum, one) => sum + one, 0) / days, stay = ready.reduce((sum, at, job) => sum + at - (line.arrives[job] as number), 0) / count;
  return `The line itself obeys the oldest law of queues: on ${count} jobs drawn at random there were ${inside.toFixed(3)} reels in the shop on average, and reels a day (${(count / days).toFixed(3)}) times days each stayed (${stay.toFixed(3)}) is ${((count / days) * stay).toFixed(3)}.`;
}

export async function notebook(demo: Demo): Promise<readonly Piece[]> {
  const records = await benchRecords(await demo.engine(), TODAY, { hours: NO_HOURS, closures: [], rates: NO_RATES }), load = await benchLoadOf(records), { season } = load;
  return [
    text("# The season and the queue", "",
      `The demo shop on ${TODAY}: ${season.past.length} weeks of reels are known, ${load.backlog.open} reels in the shop with ${load.backlog.hours.toFixed(0)} hours of work, and about ${(load.capacity?.hours_a_week ?? 0).toFixed(0)} hours a week to do it in.`),
    picture("Reels a week, last year and the half year ahead", "Reels that came in each week of the last year, and those to come with the range that holds eight weeks in ten.", reelsChart(season.past, load.weeks, BOARD)),
    ...published(), ...promised(load), text(littlesLaw()), ...await whatIfs(records, load),
    sources(
      "Trying each way only on what was known: Tashman (2000), International Journal of Forecasting 16:437–450; `src/stats/rolling-origin.ts`. Losses: Gneiting & Raftery (2007), JASA 102:359–378. Counts with a yearly wave: Held & Paul (2012), Biometrical Journal 54:824–843.",
      "The series: weekly reports of Salmonella Agona, 1990 to 1995 (Farrington and others 1996, JRSS A 159:547–563), object salmonella.agona of the R package surveillance; `tests/reference/15-records/weekly-intake`.",
      "Reels in the shop: Little (1961), Operations Research 9:383–387. The line, first come first served, is our own: `src/answers/bench-load/queue.ts`."),
  ];
}

export const main = (): Promise<number> => told(notebook);
