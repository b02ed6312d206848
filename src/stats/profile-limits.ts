import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { newtonMaximum } from "./newton-maximum.ts";
import type { LocalShape } from "./newton-maximum.ts";

/** A family of places in which one figure of interest is held: `base + columns · free` holds it at the value asked. */
export interface HeldFigure {
  readonly held: (figure: number) => { readonly base: Float64Array; readonly columns: readonly Float64Array[] };
  /** The free coordinates of any place, used to come from one value to the next. */
  readonly free: (at: Float64Array) => readonly number[];
  /** Slope of the function when the figure moves and the free coordinates stay. */
  readonly slope: (local: LocalShape, at: Float64Array, figure: number) => number;
}

/** The highest point of all, what the figure is there, and roughly how sure it is. */
export interface ProfileTop { readonly at: Float64Array; readonly value: number; readonly figure: number; readonly se: number }

const MOST_TURNS = 60;
/** Standard errors from the best value after which a limit counts as not there. */
const FARTHEST = 60;

function place(figure: number, kept: readonly number[], { held }: HeldFigure): { at: Float64Array; columns: readonly Float64Array[] } {
  const { base, columns } = held(figure);
  return { at: base.map((value, k) => columns.reduce((sum, column, i) => sum + (column[k] as number) * (kept[i] as number), value)), columns };
}

/** Where the profile has fallen by z²/2 on one side: Newton on its signed root, kept inside what is known to be too near and too far. */
function limit(f: (at: Float64Array) => LocalShape, family: HeldFigure, top: ProfileTop, z: number, side: 1 | -1): number | null {
  let near = top.figure, far: number | null = null, figure = top.figure + side * z * top.se, kept = family.free(top.at);
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    if (Math.abs(figure - top.figure) > FARTHEST * top.se) return null;
    const { at, columns } = place(figure, kept, family), found = newtonMaximum(f, at, columns);
    const root = Math.sqrt(2 * Math.max(0, top.value - found.local.value)), usable = found.converged && Number.isFinite(root);
    if (usable && Math.abs(root - z) < 1e-9) return figure;
    if (usable && root < z) near = figure;
    else far = figure;
    if (far !== null && Math.abs(far - near) < 1e-12 * (Math.abs(far) + 1)) return usable ? figure : null;
    const slope = usable ? Math.abs(family.slope(found.local, found.at, figure)) / root : 0;
    const guess = figure - (side * (root - z)) / slope, outer = far ?? near + side * Math.max(2 * Math.abs(near - top.figure), top.se);
    const inside = Number.isFinite(guess) && (guess - near) * side > 0 && (outer - guess) * side > 0;
    if (usable && root < z) kept = family.free(found.at);
    figure = inside ? guess : far === null ? outer : (near + far) / 2;
  }
  return null;
}

/**
 * Limits of a figure by profile likelihood: the values at which the best the other parameters can do lies z²/2 under the best of all
 * (Cox & Oakes 1984, Analysis of Survival Data, sec. 3.3). A side on which it never falls that far has no limit.
 *
 * @param f log-likelihood with slopes and curvature
 * @param family the places with the figure held
 * @returns null for a side without a limit
 * @example
 * profileLimits((at) => ({ value: -(at[0] ** 2) / 2, gradient: [-at[0]], hessian: [-1] }), { held: (c) => ({ base: new Float64Array([c]), columns: [] }), free: () => [], slope: (local) => local.gradient[0] }, { at: new Float64Array([0]), value: 0, figure: 0, se: 1 }).high; // => 1.959964
 */
export function profileLimits(
  f: (at: Float64Array) => LocalShape, family: HeldFigure, top: ProfileTop, level = 0.95,
): { low: number | null; high: number | null } {
  const z = normalQuantile((1 + level) / 2, 0, 1);
  if (!(top.se > 0 && top.se < Infinity)) return { low: null, high: null };
  return { low: limit(f, family, top, z, -1), high: limit(f, family, top, z, 1) };
}
