import { durationText, momentText, numberText } from "./typed-text.ts";

/** What a spreadsheet shows a stored number as; `elapsed` counts hours over 24, `time` is a time of day. */
export type Shown = "number" | "date" | "time" | "elapsed" | { readonly before: string; readonly digits: number; readonly behind: string };

/** Formats that every spreadsheet knows by number (ECMA-376 part 1, 18.8.30, with the East Asian ones). */
function builtIn(id: number): Shown {
  if ((id >= 14 && id <= 17) || id === 22 || (id >= 27 && id <= 31) || id === 36 || (id >= 50 && id <= 54) || id === 57 || id === 58) return "date";
  if ((id >= 18 && id <= 21) || (id >= 32 && id <= 35) || id === 45 || id === 47 || id === 55 || id === 56) return "time";
  return id === 46 ? "elapsed" : "number";
}

const QUOTED = /"[^"]*"|\\.|[_*]./g;
const PADDED = /^((?:"[^"]*"|\\.|[-/ .:()])*)(0{2,})((?:"[^"]*"|\\.|[-/ .:()])*)$/;
const literal = (code: string) => code.replace(/"([^"]*)"|\\(.)/g, (_whole, quoted?: string, one?: string) => quoted ?? one ?? "");

/**
 * What a number with this format is shown as.
 *
 * @param id number of the format
 * @param code the format as it is written, null for a built-in one
 * @example
 * shownAs(164, "[h]:mm") // => "elapsed"
 * shownAs(164, '"R-"0000') // => { before: "R-", digits: 4, behind: "" }
 */
export function shownAs(id: number, code: string | null): Shown {
  if (code === null) return builtIn(id);
  const section = code.replace(/;.*$/s, "").replace(/\[\$[^\]]*\]|\[(?:black|blue|cyan|green|magenta|red|white|yellow|color ?\d+|[<>=][^\]]*)\]/gi, "");
  const padded = PADDED.exec(section);
  if (padded) return { before: literal(padded[1] ?? ""), digits: padded[2]?.length ?? 0, behind: literal(padded[3] ?? "") };
  const bare = section.replace(QUOTED, "").toLowerCase();
  if (/\[(h+|m+|s+)\]/.test(bare)) return "elapsed";
  if (bare.includes("general") || bare.includes("@")) return "number";
  const letters = bare.replace(/am\/pm|a\/p/g, "h").replace(/\[[^\]]*\]/g, "").replace(/e[+-]/g, "");
  if (/[yd]/.test(letters) || /^[^hs]*m[^hs]*$/.test(letters)) return "date";
  return /[hs]/.test(letters) ? "time" : "number";
}

const DAY_S = 86_400, DAY_MS = DAY_S * 1000;
/** The first spreadsheet believed that 1900 had a 29 February, and all others keep its day 60 for the sake of old files. */
const DAY_THAT_NEVER_WAS = 60;
const BEFORE_1900 = Date.UTC(1899, 11, 31), START_1904 = Date.UTC(1904, 0, 1);

function startMs(serial: number, is_1904: boolean): number {
  if (is_1904) return START_1904;
  return serial < DAY_THAT_NEVER_WAS ? BEFORE_1900 : BEFORE_1900 - DAY_MS;
}

export interface Typed {
  readonly text: string;
  /** The text says no more and no less than the cell. */
  readonly typed: boolean;
}

/** Day 0 and 29 February 1900 are shown by spreadsheets and are no days. */
function dateOf(serial: number, is_1904: boolean): Typed {
  if (serial < 0 || (serial < 1 && !is_1904)) return { text: numberText(serial), typed: false };
  if (!is_1904 && Math.floor(serial) === DAY_THAT_NEVER_WAS) return { text: "1900-02-29", typed: false };
  // Serials are fractions of a day in floating point; programs write times to the second.
  const text = momentText(startMs(serial, is_1904) + Math.round(serial * DAY_S) * 1000);
  return text === "" ? { text: numberText(serial), typed: true } : { text, typed: true };
}

/**
 * The text of a number as a reader of the sheet sees it.
 *
 * @param is_1904 days are counted from 1904-01-01, as old Macintosh programs do, not from 1900
 * @example
 * serialText(45720, "date", false) // => { text: "2025-03-04", typed: true }
 */
export function serialText(value: number, shown: Shown, is_1904: boolean): Typed {
  if (shown === "date") return dateOf(value, is_1904);
  if (shown === "elapsed") return { text: durationText(value * DAY_S), typed: true };
  if (shown === "time") return { text: durationText(Math.round((value - Math.floor(value)) * DAY_S) % DAY_S), typed: true };
  if (shown === "number" || !Number.isSafeInteger(value) || value < 0) return { text: numberText(value), typed: true };
  // A ticket number shown as R-0123 is a name, not the number 123.
  return { text: shown.before + String(value).padStart(shown.digits, "0") + shown.behind, typed: false };
}
