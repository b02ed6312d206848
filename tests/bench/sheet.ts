import { cpus, totalmem } from "node:os";
import type { AnswersAtSize } from "./answers-at-size.ts";
import type { AppAtSize } from "./app-at-size.ts";
import type { sideBySide } from "./engines.ts";
import type { besideR } from "./in-r.ts";
import { median } from "./median.ts";
import { appTables, besideTables, growthTable, importTable } from "./sheet-tables.ts";
import type { FailureTimes } from "./failures.ts";
import type { SheetTime } from "./import.ts";
import type { ImportsAtSize } from "./imports-at-size.ts";
import type { StockTimes } from "./stock.ts";
import type { Sizes } from "./sizes.ts";
import type { Visits } from "./visits.ts";
import type { WearTimes } from "./wear.ts";

export interface Measured {
  day: string;
  browser: string;
  visits: readonly Visits[];
  sizes: Sizes;
  imports: readonly ImportsAtSize[];
  sheets: readonly SheetTime[];
  failures: readonly FailureTimes[];
  wear: readonly WearTimes[];
  stock: readonly StockTimes[];
  growth: readonly AnswersAtSize[];
  engines: Awaited<ReturnType<typeof sideBySide>>;
  in_r: ReturnType<typeof besideR>;
  apps: readonly AppAtSize[];
  /** Mean number of programs that wanted a core in the last minute. */
  load: number;
}

const seconds = (values: readonly number[]) => `${(median(values) / 1000).toFixed(2)} s`;
const spread = (values: readonly number[]) => `${(Math.min(...values) / 1000).toFixed(2)} to ${(Math.max(...values) / 1000).toFixed(2)} s`;
const kilobytes = (bytes: number) => `${(bytes / 1000).toFixed(0)} kB`;

function timeRow(what: string, values: readonly number[], aim: string): string {
  return `| ${what} | ${seconds(values)} | ${spread(values)} | ${values.length} | ${aim} |`;
}

function wearRows(wear: readonly WearTimes[]): string[] {
  const count = (of: "demo_inspections" | "inspections") => (wear[0]?.[of] ?? 0).toLocaleString("en");
  return [
    timeRow(`How long parts last, all positions of the demo (${count("demo_inspections")} inspections)`, wear.map(({ demo_first }) => demo_first.whole), "under 1 s"),
    timeRow("When a kind of reel should come in", wear.map(({ advice }) => advice.whole), "under 1 s"),
    timeRow("When a reel of one model should come in", wear.map(({ advice_model }) => advice_model.whole), "under 1 s"),
    timeRow(`How long parts last, ${count("inspections")} inspections, first asked`, wear.map(({ first }) => first.whole), "under 3 s"),
    timeRow("– asked again with another filter", wear.map(({ again }) => again.whole), "–"),
    timeRow("– from a cancel to its end", wear.map(({ cancel }) => cancel), "–"),
  ];
}

function failureRows(failures: readonly FailureTimes[]): string[] {
  const of = (what: Exclude<keyof FailureTimes, "first" | "again">) => failures.map((one) => one[what]);
  return [
    timeRow(`Shares of all parts on all models, ${(failures[0]?.inspections ?? 0).toLocaleString("en")} inspections`, of("shares"), "under 1 s"),
    timeRow("Verdicts on all of them, first asked", failures.map(({ first }) => first.whole), "under 1 s"),
    timeRow("– asked again", failures.map(({ again }) => again.whole), "under 1 s"),
    timeRow("– from a cancel while counting to its end", of("cancel_counting"), "–"),
    timeRow("One part's comebacks with their curve", of("back"), "–"),
    timeRow("Bad batches", of("batches"), "–"),
  ];
}

function stockRows(stock: readonly StockTimes[]): string[] {
  return [
    timeRow(`Money against jobs, ${stock[0]?.groups ?? 0} parts and ${(stock[0]?.scenarios ?? 0).toLocaleString("en")} futures`, stock.map(({ curve }) => curve), "under 2 s"),
    timeRow("– the list for another sum", stock.map(({ list }) => list), "at once"),
    timeRow("– from a cancel to its end", stock.map(({ cancel }) => cancel), "–"),
    timeRow("The advice tried on the demo's past", stock.map(({ replay }) => replay), "–"),
  ];
}

/** The bench's findings as the page that is committed. */
export function sheet({ day, browser, visits, sizes, imports, sheets, failures, wear, stock, load, growth, engines, in_r, apps }: Measured): string {
  const machine = `${cpus().length} cores (${cpus()[0]?.model.trim() ?? "unknown"}), ${(totalmem() / 2 ** 30).toFixed(0)} GB, Node ${process.versions.node}, ${browser}`;
  return [
    "# Bench", "",
    `${day}, ${machine}; load ${load.toFixed(1)} when it began. Made by \`npm run bench\`.`, "",
    ...(load > 1 ? [`**The machine was busy with other work: the times are too long and say nothing about the aims.**`, ""] : []),
    "| what | median | range | runs | aim |", "| --- | ---: | ---: | ---: | --- |",
    timeRow("First visit to first picture, demo import included", visits.map(({ first }) => first), "under 3 s"),
    timeRow("Second visit to first picture", visits.map(({ second }) => second), "under 2 s"),
    timeRow(`Import of a sheet of ${sheets[0]?.rows ?? 0} jobs with notes, in Node`, sheets.map(({ milliseconds }) => milliseconds), "under 5 s"),
    ...failureRows(failures), ...wearRows(wear), ...stockRows(stock),
    "", ...importTable(imports), "", ...appTables(apps), "", ...growthTable(growth), "", ...besideTables(engines, in_r),
    "", "## What is fetched", "", "| fetched once, gzip | size |", "| --- | ---: |",
    `| own scripts before the rooms | ${kilobytes(sizes.scripts_before_rooms)} |`,
    `| scripts of the rooms and what they share | ${kilobytes(sizes.scripts_of_rooms_and_engine)} |`,
    `| styles | ${kilobytes(sizes.styles)} |`,
    `| typeface, all alphabets | ${kilobytes(sizes.fonts)} |`,
    `| workers' scripts | ${kilobytes(sizes.workers)} |`,
    `| engine | ${kilobytes(sizes.engine)} |`,
    "", "| opened as the first room, beyond that, gzip | scripts |", "| --- | ---: |", ...sizes.rooms.map(({ room, bytes }) => `| ${room} | ${kilobytes(bytes)} |`), "",
  ].join("\n");
}
