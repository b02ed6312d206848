import { withoutApostrophe } from "../csv-out.ts";
import { Wrong } from "./wrong.ts";

/** Columns that hold sentences; the others hold names and numbers on one line. */
const SENTENCES = new Set(["note", "complaint"]);
const LONGEST_SENTENCE = 20_000;
const LONGEST_NAME = 200;

// Control characters of ISO 6429 (C0 and C1) except tab and line end, and the sign that stands for an undecodable byte.
const UNSHOWABLE = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\uFFFD]/;

/** Most cells: plain letters with single blanks, and nothing in front that a spreadsheet would run. */
const PLAIN = /^[!-&(-*,./-<>?A-~](?: ?[!-~])*$/;

/**
 * Reads a text: its own letters, composed (NFC), with line ends as `\n`; names have single blanks.
 *
 * @example
 * textCell("Whinbeck   40", "model") // => "Whinbeck 40"
 */
export function textCell(text: string, column: string): string | Wrong {
  const sentence = SENTENCES.has(column), longest = sentence ? LONGEST_SENTENCE : LONGEST_NAME;
  if (text.length > longest) return new Wrong(`the text is longer than ${longest} characters`);
  if (PLAIN.test(text)) return text;
  if (UNSHOWABLE.test(text)) return new Wrong("the text holds characters that cannot be shown");
  // Our own exports put an apostrophe in front of what a spreadsheet would run.
  const composed = withoutApostrophe(text).normalize("NFC");
  return sentence ? composed.replace(/\r\n?/g, "\n") : composed.replace(/\s+/g, " ");
}
