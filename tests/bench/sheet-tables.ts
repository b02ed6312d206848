import type { AnswersAtSize } from "./answers-at-size.ts";
import type { AppAtSize } from "./app-at-size.ts";
import type { sideBySide } from "./engines.ts";
import { FORMATS } from "./import-files.ts";
import type { Format } from "./import-files.ts";
import type { ImportsAtSize } from "./imports-at-size.ts";
import type { besideR } from "./in-r.ts";
import { median } from "./median.ts";

const seconds = (milliseconds: number) => `${(milliseconds / 1000).toFixed(2)} s`;
const count = (value: number) => value.toLocaleString("en");
const milliseconds = (value: number | null) => (value === null || Number.isNaN(value) ? "–" : `${value < 10 ? value.toFixed(1) : value.toFixed(0)} ms`);

/** The value that so many of a hundred do not exceed. */
function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}

function appTable(app: AppAtSize): string[] {
  const rooms = [...new Set(app.filters.map(({ room }) => room))].map((room) => {
    const some = app.filters.filter((one) => one.room === room), of = (what: "first" | "whole", share: number) => milliseconds(percentile(some.flatMap((one) => one[what] ?? []), share));
    return `| ${room} | ${some.length} | ${of("first", 0.5)} | ${of("first", 0.95)} | ${of("whole", 0.5)} | ${of("whole", 0.95)} |`;
  });
  return [
    `### ${count(app.findings)} findings`, "",
    `Brought in through Records in ${seconds(app.import)}; restart to the last morning sheet ${seconds(app.restart.kept)} (aim, for a million findings: a picture in under 2.5 s), to what is to be ordered today ${seconds(app.restart.first)}, to the whole sheet ${seconds(app.restart.whole)}; restart again on the same day with nothing changed to the whole of today's sheet ${seconds(app.again.todays)}, to the records behind it ${seconds(app.again.ready)}; the page's process took ${(app.memory / 1024).toFixed(1)} GB at most.`, "",
    "| room opened from another | first chart or table | all of it | longest task on the page's own thread (aim: none over 100 ms) |", "| --- | ---: | ---: | ---: |",
    ...app.rooms.map(({ room, first, whole, longest }) => `| ${room} | ${milliseconds(first)} | ${milliseconds(whole)} | ${longest === 0 ? "none over 50 ms" : milliseconds(longest)} |`), "",
    "| filters changed | times | new picture, half | 95 of 100 (aim: under 150 ms) | all of it, half | 95 of 100 |", "| --- | ---: | ---: | ---: | ---: | ---: |", ...rooms,
  ];
}

/** What the built app does with large shops, in Chromium. */
export const appTables = (apps: readonly AppAtSize[]): string[] => ["## The app with a large shop, in Chromium", "", ...apps.flatMap((app, at) => [...(at === 0 ? [] : [""]), ...appTable(app)])];

const tookOf = ({ times }: ImportsAtSize) => median(times.map(({ milliseconds: took }) => took));
/** Times as long for ten times as much. */
const aTenfold = (took: number, before: number, size: number, size_before: number) => (took / before) ** (1 / Math.log10(size / size_before));

/** How long findings with their tickets take to come in from each format of file, and how it grows. */
export function importTable(imports: readonly ImportsAtSize[]): string[] {
  const sizes = [...new Set(imports.map(({ findings }) => findings))].sort((a, b) => a - b), [middle = NaN, largest = NaN] = sizes.slice(-2);
  const of = (format: Format, size: number) => imports.find((one) => one.format === format && one.findings === size), last = (format: Format) => of(format, largest);
  const line = (name: string, value: (format: Format) => string) => `| ${name} | ${FORMATS.map(value).join(" | ")} |`;
  const memory = (format: Format) => Math.max(...(last(format)?.times ?? []).map(({ bytes }) => bytes));
  return [
    "## Bringing records in, in Node", "",
    "By the app's own code, each in a process of its own, the files made before: tickets and findings as two files of CSV or Arrow (days and numbers typed, not packed), or one workbook with a sheet each and its texts kept once. "
      + "A sheet holds 1,048,576 rows at most, so the largest just fits one.", "",
    `| findings | ${FORMATS.join(" | ")} |`, `| --- | ${FORMATS.map(() => "---:").join(" | ")} |`,
    ...sizes.map((size) => line(`${count(size)}, median of ${imports.find(({ findings }) => findings === size)?.times.length ?? 0}`, (format) => { const one = of(format, size); return one ? seconds(tookOf(one)) : "–"; })),
    line(`growth a tenfold, from ${count(middle)} to ${count(largest)}`, (format) => { const [from, to] = [of(format, middle), last(format)]; return from && to ? aTenfold(tookOf(to), tookOf(from), largest, middle).toFixed(1) : "–"; }),
    line(`the process grows with ${count(largest)} by`, (format) => `${(memory(format) / 1e9).toFixed(2)} GB`),
    line("– a finding, its ticket counted in", (format) => `${Math.round(memory(format) / largest)} bytes`),
    line("files on the disk", (format) => `${((last(format)?.bytes ?? NaN) / 1e6).toFixed(0)} MB`), "",
    "The aim for a million, whatever the format: under 30 s.",
  ];
}

/** How the answers grow from size to size. */
export function growthTable(growth: readonly AnswersAtSize[]): string[] {
  const names = growth[0]?.answers.map(({ what }) => what) ?? [], sizes = growth.map(({ inspections }) => inspections);
  return [
    "## How answers grow, in Node", "",
    `First asked, one after the other. The last column: times as long for ten times the inspections, from the middle size to the largest.`, "",
    `| answer | ${sizes.map((size) => `${count(size)} inspections`).join(" | ")} | growth a tenfold |`, `| --- | ${sizes.map(() => "---:").join(" | ")} | ---: |`,
    ...names.map((what, at) => {
      const took = growth.map(({ answers }) => answers[at]?.took ?? NaN), [middle = NaN, largest = NaN] = took.slice(-2), [from = NaN, to = NaN] = sizes.slice(-2);
      return `| ${what} | ${took.map(milliseconds).join(" | ")} | ${aTenfold(largest, middle, to, from).toFixed(1)} |`;
    }),
  ];
}

/** The same work elsewhere: native DuckDB with one thread, a loop over arrays, and R. */
export function besideTables({ inspections, rows }: Awaited<ReturnType<typeof sideBySide>>, in_r: ReturnType<typeof besideR>): string[] {
  const fits = in_r === null ? ["R is not on this machine, so its fits were not timed."] : [
    `Fits beside ${in_r.version}; the log-likelihoods agree to six digits.`, "", "| fit | here | R | times R |", "| --- | ---: | ---: | ---: |",
    ...in_r.fits.map(({ what, ours, r }) => `| ${what} | ${milliseconds(ours)} | ${milliseconds(r)} | ${(ours / r).toFixed(2)} |`),
  ];
  return [
    "## The same work elsewhere", "", `${count(inspections)} inspections, in Node, by turns: the browser's engine, native DuckDB with one thread, one JavaScript loop over arrays.`, "",
    "| work | browser's engine | native, one thread | times native (aim: 1.5) | loop |", "| --- | ---: | ---: | ---: | ---: |",
    ...rows.map(({ what, ours, native, loop }) => `| ${what} | ${milliseconds(ours)} | ${milliseconds(native)} | ${native === null ? "–" : (ours / native).toFixed(2)} | ${milliseconds(loop)} |`),
    "", ...fits,
  ];
}
