import { DELIMITER_LINE, csvRows, quotesNothing, shapeOf } from "./csv.ts";
import { encodingOf, textOf } from "./decoded-text.ts";
import { sheetOf } from "./sheet-source.ts";
import type { OpenOptions, Sheet, TextShape } from "./sheet.ts";

/**
 * The one sheet of a text file with separated cells. A first line that only names the separator (`sep=;`) is not given.
 *
 * @param head first bytes, unpacked
 */
export async function textSheet(blob: Blob, head: Uint8Array, options: OpenOptions): Promise<Sheet> {
  const { signal, isKnownHeading = () => false, text: said = {} } = options;
  const encoding = said.encoding ?? await encodingOf(blob, signal);
  const start = new TextDecoder(encoding).decode(head, { stream: true }), guessed = shapeOf(start, isKnownHeading);
  const text: TextShape = { ...guessed, encoding, delimiter: said.delimiter ?? guessed.delimiter };
  const is_named = DELIMITER_LINE.test(start), rows_as = quotesNothing(start, text) ? { ...text, quoteChar: "\u0000" } : text;
  return sheetOf({ name: null, text }, options, async function* (onBytes) {
    let skip = is_named;
    for await (const rows of csvRows(textOf(blob, encoding, signal, onBytes), rows_as)) {
      yield skip ? rows.slice(1) : rows;
      skip = false;
    }
  });
}
