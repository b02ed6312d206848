/**
 * Jobs in the order they came, as columns so that a thousand futures can be run through in a moment. Days count from 0, Sundays
 * and closed days too.
 */
export interface JobLine {
  readonly count: number;
  readonly arrives: Int32Array;
  readonly minutes: Float64Array;
  /** Days a job waits for parts once it is opened, 0 for none. */
  readonly wait_days: Float64Array;
  /** Day before which it cannot be ready (its part is on order), 0 for none. */
  readonly not_before: Float64Array;
}

/** An empty line with room for so many jobs. */
export const emptyLine = (room: number): JobLine => ({ count: 0, arrives: new Int32Array(room), minutes: new Float64Array(room), wait_days: new Float64Array(room), not_before: new Float64Array(room) });

/**
 * Works off jobs first come, first served: each day takes what its minutes allow; a job is opened when the line reaches it, its
 * minutes are spent, and if a part is missing it is ready only when the part has come (others go on meanwhile). A job that arrives
 * on a day can be done that day.
 *
 * @param capacity minutes of each day
 * @param ready is filled with the day each job is ready; `capacity.length` where that lies beyond the days
 * @param left is filled with the minutes of work in the line at the end of each day
 */
export function workOff(capacity: Float64Array, line: JobLine, ready: Float64Array, left: Float64Array): void {
  const { count, arrives, minutes, wait_days, not_before } = line, days = capacity.length;
  let next = 0, come = 0, rest = 0, waiting = 0;
  for (let day = 0; day < days; day += 1) {
    for (; come < count && (arrives[come] as number) <= day; come += 1) {
      waiting += minutes[come] as number;
      if (come === next) rest = minutes[next] as number;
    }
    let free = capacity[day] as number;
    while (next < come && free > 0 && rest <= free) {
      free -= rest;
      waiting -= rest;
      ready[next] = Math.min(days, Math.max(day + Math.ceil(wait_days[next] as number), not_before[next] as number));
      next += 1;
      rest = next < come ? (minutes[next] as number) : 0;
    }
    if (next < come && free > 0) { rest -= free; waiting -= free; }
    left[day] = Math.max(0, waiting);
  }
  for (; next < count; next += 1) ready[next] = days;
}

/** Reels in the shop at the end of each day: come and not yet ready. */
export function inShop(days: number, { count, arrives }: JobLine, ready: Float64Array): Int32Array {
  const change = new Int32Array(days + 1);
  for (let job = 0; job < count; job += 1) {
    const from = arrives[job] as number, to = Math.min(days, ready[job] as number);
    if (from >= days) continue;
    change[from] = (change[from] as number) + 1;
    change[to] = (change[to] as number) - 1;
  }
  const inside = new Int32Array(days);
  let now = 0;
  for (let day = 0; day < days; day += 1) inside[day] = now += change[day] as number;
  return inside;
}
