import type { BenchLoad } from "../../answers/bench-load/bench-load.ts";
import type { JobPromise } from "../../answers/bench-load/promise.ts";
import { jobName } from "../../answers/labour/job-name.ts";
import type { Look } from "../../answers/morning/last-look.ts";
import type { BenchTicket } from "../../records/bench-log/bench-store.ts";
import { count, date, longDay, number, share } from "../../ui/format.ts";
import { capital, linkTo, type Item, type Part } from "./sheet-part.ts";

/** Kinds of job, and unfinished tickets, named on the sheet. */
const MOST_JOBS = 3, MOST_TICKETS = 3;
/** Hours that a backlog must move to be told as a change. */
const TOLD_HOURS = 1;

const SEASON = linkTo("season");

function backlogItem({ backlog, capacity }: BenchLoad, locale?: string): Item {
  const there = capacity === null ? "" : `; the bench has ${number(capacity.hours_a_week, 0, locale)} hours a week${capacity.from === "written" ? "" : ", judged by its busy weeks"}`;
  const wait = backlog.waiting === 0 ? "" : ` ${count(backlog.waiting, "of the reels waits", "of the reels wait", locale)} for a part.`;
  return {
    before: "", figure: `${count(Math.round(backlog.hours), "hour", "hours", locale)} of work`, href: SEASON,
    after: ` ${Math.round(backlog.hours) === 1 ? "waits" : "wait"} in ${count(backlog.open, "reel", "reels", locale)}${there}.${wait}`,
    why: backlog.forgotten === 0 ? "" : `${count(backlog.forgotten, "ticket is", "tickets are", locale)} not in it: open for over four months, so taken for forgotten.`,
  };
}

function promiseItem(promise: JobPromise, locale?: string): Item {
  const job = jobName(promise), late = promise.promise === null || promise.days === null;
  return {
    before: `${capital(job)}, taken in today: `, figure: late ? "no day in the coming half year" : longDay(promise.promise, locale), href: linkTo("season", { job }),
    after: late ? "." : `, ${count(promise.days, "day", "days", locale)} from today (from ${count(promise.n, "job", "jobs", locale)}).`, why: "",
  };
}

function keptItem({ kept }: BenchLoad, locale?: string): Item[] {
  if (kept === null) return [];
  return [{
    before: "Dates told in this way would have been kept for ", figure: share(kept.kept, kept.n, locale), href: SEASON,
    after: ` of the last year’s reels looked at; “two weeks” for everything, for ${share(kept.two_weeks, kept.n, locale)}.`, why: "",
  }];
}

function moreHours(load: BenchLoad, before: Look | null, locale?: string): string {
  const then = before?.figures.backlog_hours ?? null;
  return then === null || Math.abs(load.backlog.hours - then) < TOLD_HOURS ? "" : `${number(then, 0, locale)} hours of work waited then.`;
}

/** How full the bench is, the dates to promise for the jobs most asked for, and how such dates were kept. */
export function promisePart(load: BenchLoad, before: Look | null, locale?: string): Part {
  const asked = [...load.promises].sort((a, b) => b.n - a.n).slice(0, MOST_JOBS), told = load.status === "ok" || load.status === "no hours";
  return {
    title: "Promise today", to_do: false, nothing: load.status_text || load.season.status_text, changed: told ? moreHours(load, before, locale) : "",
    items: told ? [backlogItem(load, locale), ...asked.map((one) => promiseItem(one, locale)), ...keptItem(load, locale)] : [],
    more: { words: load.status === "no hours" ? `${load.status_text} On Season` : "Every job and the weeks ahead, on Season", href: SEASON },
  };
}

const written = ({ entries }: BenchTicket, field: string): string => entries.get(field)?.value?.trim() ?? "";

function ticketItem(ticket: BenchTicket, locale?: string): Item {
  const reel = [written(ticket, "maker"), written(ticket, "model")].filter((word) => word !== "").join(" "), job = written(ticket, "job");
  return {
    before: "", figure: [written(ticket, "ticket_no") || "No number", reel || "model not written"].join(", "), href: linkTo("bench", { ticket: ticket.id, step: "log" }),
    after: `: ${job || "job not written"}, came in ${date(written(ticket, "received_on"), locale)}.`, why: "",
  };
}

/** Tickets taken in and not finished. */
export function ticketsPart(tickets: readonly BenchTicket[], locale?: string): Part {
  const open = tickets.filter(({ finished_at }) => finished_at === null).reverse(), rest = open.length - MOST_TICKETS;
  return {
    title: "At the bench", to_do: true, changed: "", items: open.slice(0, MOST_TICKETS).map((one) => ticketItem(one, locale)), nothing: "No ticket is unfinished at the bench.",
    more: { words: `Take a reel in, or go on, on Bench${rest > 0 ? `: ${count(rest, "more ticket", "more tickets", locale)} not finished` : ""}`, href: linkTo("bench") },
  };
}
