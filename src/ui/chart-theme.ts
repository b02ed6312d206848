/** Colours and type a `-chart.ts` draws with; every value may stand in an SVG attribute. */
export interface ChartTheme {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly rule: string;
  readonly accent: string;
  readonly attention: string;
  /** Told apart under the common colour-blindnesses, and still always used together with `symbols` or a label. */
  readonly categories: readonly string[];
  /** Names of Plot's symbols, one for each category. */
  readonly symbols: readonly string[];
  readonly font_size: number;
}

const symbols = ["circle", "square", "triangle", "diamond2", "cross"] as const;

/** On screen the colours are names of our style sheet, so that light, dark and print need no second drawing. */
export const SCREEN_THEME: ChartTheme = {
  paper: "var(--paper)",
  ink: "var(--ink)",
  soft: "var(--soft)",
  rule: "var(--rule)",
  accent: "var(--accent)",
  attention: "var(--attention)",
  categories: ["var(--category-1)", "var(--category-2)", "var(--category-3)", "var(--category-4)", "var(--category-5)"],
  symbols,
  font_size: 14,
};

/** The light colours written out, for pictures that stand alone: committed SVG files and downloads. */
export const PAPER_THEME: ChartTheme = {
  paper: "#f6f4ee",
  ink: "#17262b",
  soft: "#4d5a5c",
  rule: "#cbc7ba",
  accent: "#0e5560",
  attention: "#9c3a10",
  categories: ["#11525c", "#b8673a", "#6684bd", "#6f560a", "#4a2080"],
  symbols,
  font_size: 14,
};

/** Black on white, for pictures that are handed over on paper whatever the screen shows; on screen they take its ink. */
export const PRINT_THEME: ChartTheme = { ...SCREEN_THEME, accent: "var(--ink)", attention: "var(--ink)", soft: "var(--ink)" };
