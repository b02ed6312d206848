import type { Gap } from "../../records/bench-log/bench-timer.ts";
import { minutes, readerLocale } from "../../ui/format.ts";

const MINUTE = 60_000, DAY = 24 * 60 * MINUTE;

/** A moment as the clock on the wall shows it, with the day where it is not today. */
export function clock(at: number, now = Date.now(), locale = readerLocale()): string {
  const near = Math.abs(now - at) < DAY && new Date(at).getDate() === new Date(now).getDate();
  return new Intl.DateTimeFormat(locale, { hour: "2-digit", minute: "2-digit", ...(near ? {} : { day: "numeric", month: "short" }) }).format(at);
}

/** What is known of a gap in a running timer. */
export function gapWords({ from, to }: Gap, now = Date.now(), locale = readerLocale()): string {
  if (to < from) return `This computer’s clock was put back: it read ${clock(from, now, locale)} before and reads ${clock(to, now, locale)} now.`;
  return `The page was closed or the tablet asleep from ${clock(from, now, locale)} to ${clock(to, now, locale)} (${minutes((to - from) / MINUTE, locale)}). Was that work on this reel?`;
}
