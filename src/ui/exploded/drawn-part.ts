import { REEL_LAYOUTS } from "./reel-layouts.ts";
import type { Shape } from "./part-shapes.ts";

/** How a part is filled; the words beside it say the same, so that nothing hangs on the eye for colour. */
export const TONES = ["few", "step-1", "step-2", "step-3", "step-4", "step-5", "plain", "dotted", "striped", "strong"] as const;
export type Tone = (typeof TONES)[number];

/** One part as the drawing shows it. */
export interface PartFigures {
  readonly position: string;
  readonly name: string;
  /** Counts and range in words; stands under the name. */
  readonly figures: string;
  /** A word that weighs more than the figures, or null. */
  readonly word: string | null;
  readonly tone: Tone;
  /** Where a press on the part leads. */
  readonly href: string;
}
export interface DrawnPart extends PartFigures { readonly shape: Shape }
export interface DrawnAxis { readonly title: string; readonly parts: readonly DrawnPart[] }

/**
 * The parts of one kind of reel on their axes, outermost first. Axes without a part of which anything is known are left out.
 *
 * @returns no axis for a kind that has no view
 */
export function drawnAxes(reel_kind: string, parts: readonly PartFigures[]): readonly DrawnAxis[] {
  const known = new Map(parts.map((part) => [part.position, part]));
  const axes = Object.hasOwn(REEL_LAYOUTS, reel_kind) ? REEL_LAYOUTS[reel_kind] ?? [] : [];
  return axes.map(({ title, parts: places }) => ({
    title, parts: places.flatMap(([position, shape]) => { const part = known.get(position); return part ? [{ ...part, shape }] : []; }),
  })).filter((axis) => axis.parts.length > 0);
}

/** Steps of a share failed, lightest first: the upper limit of each, and its words. */
export const SHARE_STEPS: readonly { readonly tone: Tone; readonly under: number; readonly words: string }[] = [
  { tone: "step-1", under: 0.02, words: "under 2\u00a0%" }, { tone: "step-2", under: 0.05, words: "2 to 5\u00a0%" }, { tone: "step-3", under: 0.1, words: "5 to 10\u00a0%" },
  { tone: "step-4", under: 0.2, words: "10 to 20\u00a0%" }, { tone: "step-5", under: Infinity, words: "20\u00a0% and over" },
];

/**
 * The tone of a share failed; null (too few to have one) is hatched.
 *
 * @example
 * shareTone(0.07); // => "step-3"
 */
export const shareTone = (share: number | null): Tone => (share === null ? "few" : SHARE_STEPS.find(({ under }) => share < under)?.tone ?? "step-5");
