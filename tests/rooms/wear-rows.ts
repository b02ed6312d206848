import type { Advice, AdviceDue, AdvicePosition } from "../../src/answers/wear/advice.ts";
import type { CurvePoint, GradePicture, Life, Limits, RugMark, Sensitivity, StepPoint, WearEffect, WearRow } from "../../src/answers/wear/wear.ts";

export const limits = (value: number | null = null, low: number | null = null, high: number | null = null): Limits => ({ value, low, high });
export const life = (share: number, value: number | null = null, low: number | null = null, high: number | null = null): Life =>
  ({ share, value, low, high, beyond: false });

/** Line roller bearings that wear as a Weibull of shape 1.7 and scale 128 salt days (invented). */
export const wearRow = (rest: Partial<WearRow> = {}): WearRow => ({
  position: "line_roller_bearing", position_name: "Line roller bearing", group_code: "LR", group_name: "Line roller", clock: "salt_days", group: "*",
  method: "spells", n: 432, failed: 160, unlinked: 0, status: "ok", status_text: "", wears: "yes", shape: limits(1.7, 1.5, 1.9), shape_se: 0.1,
  scale: limits(128, 115, 144), b10: life(0.1, 34, 29, 40), b20: life(0.2, 53, 47, 60), b50: life(0.5, 103, 94, 115), b10_bound: limits(),
  longest: 120, log_likelihood: -250.1, failed_without_exposure: 0, clock_missing: 0, chosen_by_fault: 0, note: "", ...rest,
});

/** Too few failures for a curve. */
export const thinRow = (rest: Partial<WearRow> = {}): WearRow => wearRow({
  position: "osc_slider", position_name: "Oscillation slider", n: 40, failed: 2, status: "too few failures", status_text: "only 2 failed, too few for a curve", wears: null,
  b10: life(0.1), b20: life(0.2), b50: life(0.5), shape: limits(), scale: limits(), b10_bound: limits(null, 31, null), ...rest,
});

/** Ranges that run out of the records. */
export const beyondRow = (rest: Partial<WearRow> = {}): WearRow => wearRow({
  b10: { ...life(0.1, null, 70, null), beyond: true }, b20: { ...life(0.2), beyond: true }, b50: { ...life(0.5), beyond: true }, longest: 90, failed: 9, ...rest,
});

const share = (at: number) => 1 - Math.exp(-((at / 128) ** 1.7));
export const CURVE: readonly CurvePoint[] = Array.from({ length: 31 }, (_, at) => {
  const exposure = at * 5, fitted = share(exposure), off = 0.01 + 0.06 * (exposure / 150);
  return { exposure, fitted, low: Math.max(0, fitted - off), high: Math.min(1, fitted + off), beyond: exposure > 120 };
});
export const STEPS: readonly StepPoint[] = [[6, 0.02, 60], [14, 0.05, 71], [25, 0.06, 66], [33, 0.12, 58], [48, 0.16, 61], [60, 0.27, 47], [85, 0.36, 40], [104, 0.53, 29]]
  .map(([exposure = 0, observed = 0, n = 0]) => ({ exposure, observed, n }));
export const RUG: readonly RugMark[] = Array.from({ length: 30 }, (_, at) => ({ exposure: 4 + at * 4, good: Math.round(22 * Math.exp(-at / 12)), failed: Math.round(9 * share(4 + at * 4) * Math.exp(-at / 30)) }));

export const rinsed = (level: string, b10: Life, n: number, failed: number): WearRow => wearRow({ group: `rinse: ${level}`, b10, n, failed });
export const HABITS: readonly WearRow[] = [
  rinsed("never", life(0.1, 22, 18, 27), 130, 74), rinsed("sometimes", life(0.1, 34, 27, 43), 180, 60), rinsed("always", { ...life(0.1, null, 41, null), beyond: true }, 122, 26),
];

export const effect = (level: string, ratio: Limits, rest: Partial<WearEffect> = {}): WearEffect => ({
  position: "line_roller_bearing", condition: "rinse", level, reference: "always", n: 130, failed: 74, time_ratio: ratio,
  coefficient: ratio.value === null ? null : Math.log(ratio.value), se: 0.15, status: "ok", note: "", ...rest,
});

const odds = (cut: number, at: number) => 1 / (1 + Math.exp(cut - at / 28));
export const GRADE_PICTURE: GradePicture = {
  status: "ok", unwritten: 44, note: "44 inspections without a written grade are taken as new.",
  points: Array.from({ length: 25 }, (_, at) => {
    const above = [1, ...[0.6, 1.7, 2.9, 4.2].map((cut) => odds(cut, at * 5)), 0];
    return { exposure: at * 5, shares: [0, 1, 2, 3, 4].map((grade) => (above[grade] ?? 0) - (above[grade + 1] ?? 0)) };
  }),
  bands: [{ from: 0, to: 20, counts: [60, 25, 14, 6, 3] }, { from: 20, to: 50, counts: [48, 30, 22, 14, 8] }, { from: 50, to: 90, counts: [16, 20, 24, 20, 18] }, { from: 90, to: 120, counts: [1, 1, 2, 2, 1] }],
};

export const sensitivity = (assumption: string, b10: Life): Sensitivity => ({ assumption, n: 300, failed: 120, b10, note: "" });

export const advicePosition = (rest: Partial<AdvicePosition> = {}): AdvicePosition => ({
  position: "line_roller_bearing", position_name: "Line roller bearing", clock: "salt_days", due: limits(22.4, 18.1, 27.3), status: "ok", longest: 96, n: 130, failed: 74, ...rest,
});
export const due = (rest: Partial<AdviceDue> = {}): AdviceDue => ({
  clock: "salt_days", status: "ok", after: 20, value: 22.4, low: 18.1, high: 27.3, set_by: "line_roller_bearing", set_by_name: "Line roller bearing", ...rest,
});
export const advice = (rest: Partial<Advice> = {}): Advice => ({
  question: { reel_kind: null, maker: "Ekholt", model: "30", water: "salt", rinse: "never", risk: 0.1 }, status: "ok",
  by_days: due(), by_months: due({ clock: "months", after: 12, value: 12.6, low: 10.2, high: 15.4 }),
  positions: [advicePosition(), advicePosition({ position: "drag_washer_friction", position_name: "Friction washers", due: limits(61, 48, null), n: 118, failed: 14 })],
  skipping: { per_year: 24, clock: "salt_days", failed_after_one: 0.4, failed_after_two: 1.3, more_parts: 21.5, more_minutes: 18, without_price: [], without_minutes: [], note: "" },
  slip: {
    heading: "When your reel should come in again", lines: ["Bring it in after 20 days in salt or 12 months, whichever comes first.", "Rinsing with fresh water after every day in salt makes the parts last about twice as long."],
    caution: "This is what our own repair records show, not a promise. The maker's service sheet comes first; warranty work belongs to the maker's authorised service.",
  },
  text: "Of such reels, about 1 in 10 has a failed line roller bearing by then.", ...rest,
});
