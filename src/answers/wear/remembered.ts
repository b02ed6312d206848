import type { Clock } from "./wear.ts";

/** Steps a customer can remember: the first whose figure is not too large. */
const STEPS: Readonly<Record<"days" | "months", readonly number[]>> = {
  days: [1, 2, 3, 5, 7, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500],
  months: [1, 2, 3, 4, 6, 8, 9, 12, 15, 18, 24, 30, 36, 48, 60, 72, 84, 96, 108, 120],
};

/** The largest figure to remember that is not over the one computed; null under one day or month. */
export function remembered(value: number, clock: Clock): number | null {
  return STEPS[clock === "months" ? "months" : "days"].filter((step) => step <= value * 1.02).at(-1) ?? null;
}
