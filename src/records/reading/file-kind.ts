interface Sign {
  readonly bytes: string;
  readonly sentence: string;
}

/** First bytes of files that are not text, by their published signatures (one character a byte). */
const SIGNS: readonly Sign[] = [
  { bytes: "\xD0\xCF\x11\xE0", sentence: "This is an old Excel workbook (.xls); save it as CSV and bring that." },
  { bytes: "%PDF", sentence: "This is a PDF, not a table; export the records as CSV." },
  { bytes: "PAR1", sentence: "This is a Parquet file, which cannot be read yet; export the records as CSV." },
  { bytes: "ARROW1", sentence: "This is an Arrow file, which cannot be read yet; export the records as CSV." },
  { bytes: "SQLite format 3", sentence: "This is a database file; export its tables as CSV." },
  { bytes: "\x89PNG", sentence: "This is a picture, not a table." },
  { bytes: "\xFF\xD8\xFF", sentence: "This is a picture, not a table." },
  { bytes: "GIF8", sentence: "This is a picture, not a table." },
  { bytes: "{\\rtf", sentence: "This is a word-processor document (RTF), not a table." },
  { bytes: "Rar!", sentence: "This is a packed RAR archive; unpack it first." },
  { bytes: "7z\xBC\xAF", sentence: "This is a packed 7z archive; unpack it first." },
];

const WEB_PAGE = /^\s*(<!doctype\s+html|<html|<head|<body|<table|<meta)/i;

function zipSentence(text: string): string {
  if (/\[Content_Types\]\.xml|xl\/|_rels\//.test(text)) return "This is an Excel workbook (.xlsx); save the sheet as CSV and bring that.";
  if (text.includes("opendocument.spreadsheet")) return "This is a spreadsheet (.ods); save the sheet as CSV and bring that.";
  if (text.includes("opendocument") || text.includes("word/")) return "This is a word-processor document, not a table.";
  return "This is a zip archive; unpack it and bring the files in it.";
}

/** Text in UTF-16 is half zero bytes, and its byte order mark says so; without one, zero bytes are no text. */
function looksBinary(head: Uint8Array): boolean {
  const utf16 = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  return !utf16 && head.includes(0);
}

export function isGzip(head: Uint8Array): boolean {
  return head[0] === 0x1f && head[1] === 0x8b;
}

/**
 * What a file is instead of a text table, judged by its first bytes (some thousand), as one sentence; null for text.
 *
 * @example
 * whyNotText(new TextEncoder().encode("ticket_no,model")) // => null
 */
export function whyNotText(head: Uint8Array): string | null {
  const text = new TextDecoder("windows-1252").decode(head);
  const latin = Array.from(head.subarray(0, 16), (byte) => String.fromCharCode(byte)).join("");
  if (latin.startsWith("PK\x03\x04")) return zipSentence(text);
  const sign = SIGNS.find(({ bytes }) => latin.startsWith(bytes));
  if (sign) return sign.sentence;
  if (looksBinary(head)) return "This is not a text file, so no table can be read from it.";
  const bare = text.replace(/^\xEF\xBB\xBF/, "");
  if (WEB_PAGE.test(bare)) return "This is a web page (HTML), whatever its name says; export the records as CSV.";
  if (/^\s*<\?xml/.test(bare)) return "This is an XML file, not a table; export the records as CSV.";
  if (/^\s*(\{|\[\s*[{["])/.test(bare)) return "This is a JSON file, which cannot be read yet; export the records as CSV.";
  return null;
}
