import { jobName } from "../../answers/labour/job-name.ts";
import { modelName } from "../../answers/model-name.ts";
import type { Morning, WaitingPart } from "../../answers/morning/morning.ts";
import type { RestockLine } from "../../answers/stock/restock-line.ts";
import { count, date, minutes, money, number } from "../../ui/format.ts";
import { likely } from "../../ui/share-words.ts";

/** One sentence of the sheet; its figure leads to the evidence. */
export interface Item {
  readonly before: string;
  /** The figure, as a link. */
  readonly figure: string;
  readonly href: string;
  readonly after: string;
  /** Why, on a line of its own below; "" for none. */
  readonly why: string;
}

/** A part of the sheet. Something to do has a box to tick on paper. */
export interface Part {
  readonly title: string;
  readonly to_do: boolean;
  readonly items: readonly Item[];
  /** Said where there is no item. */
  readonly nothing: string;
  /** Where the whole of it is. */
  readonly more: { readonly words: string; readonly href: string };
}

/** Lines of the order named on the sheet. */
const MOST_NAMED = 6;
const address = (room: string, query: Readonly<Record<string, string>> = {}): string => {
  const words = new URLSearchParams(query).toString();
  return `#/${room}${words === "" ? "" : `?${words}`}`;
};
const capital = (text: string) => text.replace(/^./, (letter) => letter.toUpperCase());

function ordered(line: RestockLine, currency: string, locale?: string): Item {
  const name = line.name ?? line.part_no ?? line.interchange;
  const from = line.supplier === null ? "" : ` from ${line.supplier}`, cost = line.cost === null ? "" : `, ${money(line.cost, currency, 0, locale)}`;
  const wait = line.waiting === 0 ? "" : `, ${count(line.waiting, "piece", "pieces", locale)} waited for on the bench`;
  return {
    before: "", figure: `${number(line.order_qty, 0, locale)} × ${name}`, href: address("stock", { line: line.interchange }),
    after: `${from}${cost}${wait}.`, why: line.reason,
  };
}

function orderPart({ restock }: Morning, currency: string, locale?: string): Part {
  const lines = restock.sheets.flatMap((sheet) => sheet.lines);
  const first = [...lines].sort((a, b) => Number(b.waiting > 0) - Number(a.waiting > 0) || (b.cost ?? 0) - (a.cost ?? 0)).slice(0, MOST_NAMED);
  const suppliers = restock.sheets.filter((sheet) => sheet.lines.length > 0).length;
  const whole = `${count(lines.length, "line", "lines", locale)} from ${count(suppliers, "supplier", "suppliers", locale)}, ${money(restock.total, currency, 0, locale)}`;
  return {
    title: "Order", to_do: true, items: first.map((line) => ordered(line, currency, locale)),
    nothing: "Nothing to order: every part that is used has enough on the shelf or under way.",
    more: { words: lines.length === 0 ? "The whole shelf, on Stock" : `The whole order with its reasons, on Stock: ${whole}`, href: address("stock") },
  };
}

/** Title of the part that the models to warn of stand above. */
export const FAILING = "Look at these twice";

function failingPart({ failing_positions, most_failing, most_failing_opening }: Morning, locale?: string): Part {
  const opening = most_failing_opening === "planned" ? {} : { opening: "both" };
  const whence = most_failing_opening === "planned" ? "planned services" : "openings of all kinds";
  return {
    title: FAILING, to_do: false,
    items: [...failing_positions.slice(0, 1), ...most_failing.slice(0, 3)].map((row) => ({
      before: `${row.position_name}${row.model === "*" ? "" : ` on ${modelName(row)}`} had failed in `,
      figure: `${number(row.failed, 0, locale)} of ${number(row.inspected, 0, locale)}`,
      href: address("failures", { ...opening, position: row.position, ...(row.model !== "*" && { model: modelName(row) }) }),
      after: ` ${whence}, likely ${likely(row.rate_low, row.rate_high, locale)}.`, why: "",
    })),
    nothing: "Too few reels opened so far to say which parts fail most.",
    more: { words: "All parts and models, on Failures", href: address("failures", opening) },
  };
}

function slowPart({ slowest }: Morning, locale?: string): Part {
  return {
    title: "Long jobs", to_do: false,
    items: slowest.slice(0, 3).map((row) => ({
      before: `${capital(jobName(row))} usually takes ${minutes(row.median, locale)}; `,
      figure: row.p80 === null ? count(row.n, "job", "jobs", locale) : `4 in 5 are done within ${minutes(row.p80, locale)}`,
      href: address("labour", { job: jobName(row) }), after: row.p80 === null ? " so far." : ` (${count(row.n, "job", "jobs", locale)}).`, why: "",
    })),
    nothing: "No job has been done ten times with its minutes written.",
    more: { words: "Every job, on Labour", href: address("labour") },
  };
}

function recordsPart({ rows_to_fix }: Morning, locale?: string): Part {
  return {
    title: "Records", to_do: rows_to_fix > 0,
    items: rows_to_fix === 0 ? [] : [{
      before: "Fix ", figure: count(rows_to_fix, "cell", "cells", locale), href: address("records"),
      after: " that could not be taken in as written; each is listed with its file, line and reason.", why: "",
    }],
    nothing: "Nothing to fix: every row came in.", more: { words: "Bring records in, on Records", href: address("records") },
  };
}

/** What to do about a part that jobs wait for. */
function waitedFor(one: WaitingPart, assorted: boolean, locale?: string): string {
  const there = number(one.on_hand, 0, locale);
  if (assorted) return " waited for: is the right one in the drawer?";
  if (one.on_hand === null) return " waited for; the shelf count is not known.";
  return one.on_hand >= one.pieces ? ` waited for, and ${there} on the shelf: fit them.` : ` waited for, ${there} on the shelf.`;
}

function waitingPart({ waiting, restock }: Morning, locale?: string): Part | null {
  if (waiting.length === 0) return null;
  const assorted = new Set(restock.lines.filter((line) => line.status === "refused").map((line) => line.interchange));
  return {
    title: "Jobs waiting for parts", to_do: true,
    items: waiting.map((one) => ({
      before: "", figure: `${number(one.pieces, 0, locale)} × ${one.name ?? one.interchange}`, href: address("stock", { line: one.interchange }),
      after: waitedFor(one, assorted.has(one.interchange), locale), why: "",
    })),
    nothing: "", more: { words: "What is under way, on Stock", href: address("stock") },
  };
}

/** The sheet's parts, what to do first. */
export const morningParts = (morning: Morning, currency: string, locale?: string): readonly Part[] =>
  [orderPart(morning, currency, locale), waitingPart(morning, locale), failingPart(morning, locale), slowPart(morning, locale), recordsPart(morning, locale)]
    .filter((part) => part !== null);

/** What the sheet is drawn from, for its head. */
export function morningFacts({ span }: Morning, locale?: string): readonly { label: string; value: string }[] {
  return [
    { label: "Tickets", value: number(span.tickets, 0, locale) },
    { label: "From", value: date(span.from, locale) },
    { label: "To", value: date(span.to, locale) },
    { label: "Not finished", value: number(span.open_tickets, 0, locale) },
  ];
}
