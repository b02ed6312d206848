import { cautions, type Caution } from "./vocabulary-tables.ts";

/**
 * What one sheet says to mind.
 *
 * @param reel_kind leaves out what is not for this kind of reel; without it all kinds are told
 */
export const cautionsOn = (sheet: Caution["sheets"][number], reel_kind?: string): readonly string[] =>
  cautions.filter(({ sheets, reel_kinds }) => sheets.includes(sheet) && (reel_kind === undefined || reel_kinds.length === 0 || reel_kinds.some((kind) => kind === reel_kind))).map(({ text }) => text);
