import type { ChartTheme } from "./chart-theme.ts";

/** What a `-chart.ts` draws on: the width in pixels, and the page's document or a test's. */
export interface ChartSheet {
  readonly width: number;
  readonly theme: ChartTheme;
  readonly document: Document;
  /** The reader's own language when left out. */
  readonly locale?: string;
}

/** Mean width of a letter of our typeface, in parts of its size; figures and small letters mixed. */
const LETTER = 0.55;

/**
 * Room that the longest of some labels takes, in pixels: an estimate, since a drawing has no way to measure before it is shown.
 *
 * @example
 * labelWidth(["12 of 340", "–"], 14); // => 70
 */
export function labelWidth(labels: readonly string[], font_size: number): number {
  return Math.ceil(Math.max(0, ...labels.map((label) => label.length)) * font_size * LETTER);
}
