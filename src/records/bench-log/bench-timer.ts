/** When a ticket was worked on, in milliseconds since 1970 as the clock of this computer showed it. */
export interface Timer {
  readonly spans: readonly (readonly [from: number, to: number])[];
  /** Start of the span that is running, else null. */
  readonly since: number | null;
}

/** A time over which nobody can say whether the reel was worked on: the page was closed, or the tablet slept. */
export interface Gap {
  readonly from: number;
  /** Before `from` when the computer's clock was put back. */
  readonly to: number;
}

const MINUTE = 60_000;
/** The page notes every half minute that it is there. */
export const NOTED_EVERY = 30_000;
/** Longer without a note is a gap that is asked about. */
const LONGEST_SILENCE = 5 * MINUTE;
/** Clocks are set by seconds now and then; more than this back is told. */
const CLOCK_BACK = MINUTE;

export const NO_TIME: Timer = { spans: [], since: null };

const isSpan = (value: unknown): value is [number, number] => Array.isArray(value) && value.length === 2 && value.every((one) => Number.isFinite(one));

/** Reads a timer as `timerText` writes it; a text that is none is a timer that never ran. */
export function timerFrom(text: string | null | undefined): Timer {
  if (typeof text !== "string" || !/^\{.*\}$/.test(text)) return NO_TIME;
  const { spans, since } = JSON.parse(text) as { spans?: unknown; since?: unknown };
  return { spans: Array.isArray(spans) ? spans.filter(isSpan) : [], since: typeof since === "number" && Number.isFinite(since) ? since : null };
}

export const timerText = ({ spans, since }: Timer): string => JSON.stringify({ spans, since });

export const started = (timer: Timer, now: number): Timer => (timer.since === null ? { ...timer, since: now } : timer);

/** Ends the span that is running; one that ends before it began is left out. */
export function stopped({ spans, since }: Timer, at: number): Timer {
  return { spans: since !== null && at > since ? [...spans, [since, at]] : spans, since: null };
}

/**
 * Minutes at the bench until now.
 *
 * @example
 * benchMinutes({ spans: [[0, 600_000]], since: 1_200_000 }, 1_500_000) // => 15
 */
export function benchMinutes({ spans, since }: Timer, now: number): number {
  const running = since === null ? 0 : Math.max(0, now - since);
  return (spans.reduce((sum, [from, to]) => sum + (to - from), 0) + running) / MINUTE;
}

/**
 * The gap a running timer has before now, else null.
 *
 * @param seen when the page noted last that it was there, null when it never did
 */
export function gapOf({ since }: Timer, seen: number | null, now: number): Gap | null {
  if (since === null) return null;
  const from = Math.max(since, seen ?? since);
  return now - from > LONGEST_SILENCE || from - now > CLOCK_BACK ? { from, to: now } : null;
}

/** Leaves a gap out and runs on after it. */
export const withoutGap = (timer: Timer, { from, to }: Gap): Timer => started(stopped(timer, from), to);
