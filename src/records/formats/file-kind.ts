import { utf16Of } from "./decoded-text.ts";

/** What the first bytes of a file say it is; `ole` is the container of old Office files. */
export type Kind = "text" | "json" | "parquet" | "arrow" | "zip" | "ole";

interface Sign {
  readonly bytes: string;
  readonly is: Kind | { readonly sentence: string };
}

const PICTURE = { sentence: "This is a picture, not a table." };

/** First bytes of files that are not text, by their published signatures (one character a byte). */
const SIGNS: readonly Sign[] = [
  { bytes: "PK\x03\x04", is: "zip" },
  { bytes: "PK\x05\x06", is: { sentence: "This is a zip archive with nothing in it." } },
  { bytes: "\xD0\xCF\x11\xE0", is: "ole" },
  { bytes: "PAR1", is: "parquet" },
  { bytes: "PARE", is: { sentence: "This Parquet file is locked with a key; save it without one and bring that." } },
  { bytes: "ARROW1", is: "arrow" },
  { bytes: "\xFF\xFF\xFF\xFF", is: "arrow" },
  { bytes: "%PDF", is: { sentence: "This is a PDF, not a table; export the records as CSV." } },
  { bytes: "SQLite format 3", is: { sentence: "This is a database file; export its tables as CSV." } },
  { bytes: "\x00\x01\x00\x00Standard ", is: { sentence: "This is a database file; export its tables as CSV." } },
  { bytes: "\x89PNG", is: PICTURE },
  { bytes: "\xFF\xD8\xFF", is: PICTURE },
  { bytes: "GIF8", is: PICTURE },
  { bytes: "BM", is: PICTURE },
  { bytes: "{\\rtf", is: { sentence: "This is a word-processor document (RTF), not a table." } },
  { bytes: "Rar!", is: { sentence: "This is a packed RAR archive; unpack it first." } },
  { bytes: "7z\xBC\xAF", is: { sentence: "This is a packed 7z archive; unpack it first." } },
];

const WEB_PAGE = /^\s*(<!doctype\s+html|<html|<head|<body|<table|<meta|<style|<div)/i;
const JSON_START = /^\s*(\{\s*["}]|\[\s*[[{"\]\-\d])/;

/** A picture's two letters may begin a text as well; then no byte is zero. */
const fits = ({ bytes }: Sign, latin: string, head: Uint8Array) => latin.startsWith(bytes) && (bytes.length > 2 || head.includes(0));

/**
 * What a file is, by its first bytes (some thousand, unpacked), whatever it is called; a sentence when it is no table.
 *
 * @example
 * kindOf(new TextEncoder().encode("ticket_no,model")) // => "text"
 */
export function kindOf(head: Uint8Array): Kind | { readonly sentence: string } {
  const latin = Array.from(head.subarray(0, 24), (byte) => String.fromCharCode(byte)).join("");
  const sign = SIGNS.find((one) => fits(one, latin, head));
  if (sign) return sign.is;
  const wide = utf16Of(head);
  if (wide === null && head.includes(0)) return { sentence: "This is not a text file, so no table can be read from it." };
  const text = new TextDecoder(wide ?? "utf-8").decode(head);
  if (WEB_PAGE.test(text)) return { sentence: "This is a web page (HTML), whatever its name says; export the records as CSV." };
  if (/^\s*<\?xml/.test(text)) return { sentence: "This is an XML file, not a table; export the records as CSV." };
  return JSON_START.test(text) ? "json" : "text";
}

export const ZIP_ARCHIVE = "This is a zip archive; unpack it and bring the files in it.";

/** What a zip archive is, by the names of the files in it and its own word for what it is, if it has one. */
export function kindOfZip(names: readonly string[], mimetype: string): "xlsx" | "ods" | { readonly sentence: string } {
  const has = (pattern: RegExp) => names.some((name) => pattern.test(name));
  if (mimetype.startsWith("application/vnd.oasis.opendocument.spreadsheet")) return "ods";
  if (mimetype.includes("opendocument") || has(/^word\//)) return { sentence: "This is a word-processor document, not a table." };
  if (has(/^ppt\//)) return { sentence: "This is a presentation, not a table." };
  if (has(/^xl\/workbook\.bin$/)) return { sentence: "This is a binary Excel workbook (.xlsb); save it as .xlsx and bring that." };
  if (has(/^\[Content_Types\]\.xml$/)) return "xlsx";
  if (has(/^Index\/.*\.iwa$|^Index\.zip$/)) return { sentence: "This is a Numbers document; export it as Excel or CSV and bring that." };
  return { sentence: ZIP_ARCHIVE };
}
