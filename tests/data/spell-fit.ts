import type { Past } from "../../data/demo-shop/shop.ts";

interface Spell { low: number; high: number; never: number; sometimes: number }

/** Spells of line-roller bearings in salt days, from a fitting seen (or a new reel) to failure between two visits, or to good at last sight. */
function spells(past: Past): Spell[] {
  const open = new Map<number, { good: number; days: number } | null>(), found: Spell[] = [];
  const visits = [...past.visits].sort((a, b) => a.received - b.received);
  const close = (no: number, low: number, high: number) => {
    const { rinse } = past.reels[no] ?? { rinse: "always" };
    if (high > low) found.push({ low, high, never: rinse === "never" ? 1 : 0, sometimes: rinse === "sometimes" ? 1 : 0 });
  };
  for (const visit of visits.filter(({ reel }) => reel.water !== "fresh")) {
    const { no } = visit.reel, spell = open.has(no) ? open.get(no) ?? null : visit.first ? { good: 0, days: 0 } : null;
    const opening = visit.openings.find((one) => one.position === "line_roller_bearing");
    if (spell) spell.days += visit.salt_days;
    if (spell && opening) {
      if (opening.failed) close(no, spell.good, spell.days);
      else spell.good = spell.days;
    }
    if (opening?.action === "replaced" && spell && !opening.failed) close(no, spell.days, Infinity);
    open.set(no, opening?.action === "replaced" ? { good: 0, days: 0 } : opening?.failed ? null : spell);
  }
  for (const [no, spell] of open) if (spell && spell.good > 0) close(no, spell.good, Infinity);
  return found;
}

/** Minus the log-likelihood of a Weibull life whose scale depends on the rinse; `at` = log shape, log scale, two log time ratios. */
function cost(at: readonly number[], data: readonly Spell[]): number {
  const [log_shape = 0, log_scale = 0, never = 0, sometimes = 0] = at, shape = Math.exp(log_shape);
  const lived = (days: number, spell: Spell) => (days === Infinity ? 0 : Math.exp(-((days / Math.exp(log_scale - never * spell.never - sometimes * spell.sometimes)) ** shape)));
  return -data.reduce((sum, spell) => sum + Math.log(Math.max(1e-300, lived(spell.low, spell) - lived(spell.high, spell))), 0);
}

/** Lowest point by moving one coordinate at a time with shrinking steps; four parameters and a smooth valley need no more. */
function lowest(start: readonly number[], of: (at: readonly number[]) => number): number[] {
  let best = [...start], value = of(best);
  for (let step = 0.5; step > 1e-3; ) {
    const tries = best.flatMap((_, i) => [step, -step].map((move) => best.map((x, j) => (i === j ? x + move : x))));
    const better = tries.map((at) => ({ at, value: of(at) })).reduce((a, b) => (b.value < a.value ? b : a));
    if (better.value < value - 1e-9) ({ at: best, value } = better);
    else step /= 2;
  }
  return best;
}

/** How many times faster line-roller bearings of reels never and sometimes rinsed wear out than of those always rinsed. */
export function timeRatios(past: Past): { never: number; sometimes: number; shape: number } {
  const data = spells(past), [log_shape = NaN, , never = NaN, sometimes = NaN] = lowest([0.3, 4, 0, 0], (at) => cost(at, data));
  return { never: Math.exp(never), sometimes: Math.exp(sometimes), shape: Math.exp(log_shape) };
}
