import { encodingOf, textOf } from "./decoded-text.ts";
import { tablesOf, tablesOfFile } from "./json-tables.ts";
import type { JsonRecord, JsonTable } from "./json-tables.ts";
import { isList, isObject, jsonText, parsedJson, takeApart } from "./json-values.ts";
import type { Json } from "./json-values.ts";
import { PIECE_ROWS, plainRow, sheetOf } from "./sheet-source.ts";
import type { OpenOptions, Sheet, SheetRow } from "./sheet.ts";
import { LIMITS, Unreadable } from "./unreadable.ts";

/** @throws {Unreadable} when it is larger than the limit: JSON has to be in memory as a whole */
async function wholeText(blob: Blob, { signal }: OpenOptions): Promise<string> {
  const parts: string[] = [];
  let length = 0;
  for await (const part of textOf(blob, await encodingOf(blob, signal), signal, () => undefined)) {
    if ((length += part.length) > LIMITS.whole_bytes) throw new Unreadable("This JSON file is larger than 256 MB; split it, or export CSV.");
    parts.push(part);
  }
  return parts.join("");
}

/** One record a line, as JSON lines have it; null when the second line begins no record of its own. */
function linesOf(text: string): JsonRecord[] | null {
  const lines = text.split("\n"), full = lines.flatMap((line, at) => (line.trim() === "" ? [] : [{ line, at: at + 1 }]));
  if (full.length < 2 || !isObject(parsedJson(full[0]?.line ?? ""))) return null;
  return full.map(({ line, at }) => {
    const record = parsedJson(line);
    if (!isObject(record)) throw new Unreadable(`Line ${at} of this file is no whole JSON record; the file is damaged or was cut off.`);
    return { record, line: at, carried: [] };
  });
}

function rowOf(places: ReadonlyMap<string, number>, { record, line, carried }: JsonRecord): SheetRow {
  const cells = new Array<string>(places.size).fill(""), typed = new Set<number>();
  const value = (name: string, { text, typed: is_typed }: { text: string; typed: boolean }) => {
    const at = places.get(name);
    if (at === undefined) return;
    cells[at] = text;
    if (is_typed) typed.add(at);
  };
  for (const { heading, value: given } of carried) value(heading, given);
  takeApart(record, { value, list: () => undefined });
  return plainRow(line, cells, typed);
}

function tableSheet({ name, headings, records }: JsonTable, size: number, options: OpenOptions, said: readonly string[]): Sheet {
  const places = new Map(headings.map((heading, at) => [heading, at]));
  return sheetOf({ name, has_headings: true }, options, async function* (onBytes, remarks) {
    yield [plainRow(0, [...headings], null)];
    for (let at = 0; at < records.length; at += PIECE_ROWS) {
      options.signal.throwIfAborted();
      yield records.slice(at, at + PIECE_ROWS).map((record) => rowOf(places, record));
      onBytes(Math.round((size * Math.min(records.length, at + PIECE_ROWS)) / records.length));
    }
    remarks.push(...said);
  });
}

/** Lists in a list are rows without names. */
function listSheet(rows: readonly Json[], options: OpenOptions): Sheet {
  return sheetOf({ name: null }, options, async function* () {
    for (let at = 0; at < rows.length; at += PIECE_ROWS) {
      options.signal.throwIfAborted();
      yield rows.slice(at, at + PIECE_ROWS).map((row, place) => {
        const cells = (isList(row) ? row : [row]).map(jsonText);
        return plainRow(at + place + 1, cells.map(({ text }) => text), new Set(cells.flatMap(({ typed }, column) => (typed ? [column] : []))));
      });
    }
  });
}

/**
 * The sheets of a JSON file: every list of records is one, lists within records too, with the numbers of the record they
 * lie in. JSON lines are one list.
 *
 * @throws {Unreadable} when it is no JSON, too large or nested too deep
 */
export async function jsonSheets(blob: Blob, options: OpenOptions): Promise<readonly Sheet[]> {
  const text = await wholeText(blob, options), root = parsedJson(text);
  if (isList(root) && root.length > 0 && root.every(isList)) return [listSheet(root, options)];
  const lines = root === undefined ? linesOf(text) : null;
  if (root === undefined && lines === null) throw new Unreadable("This JSON file is damaged or was cut off, so it cannot be read.");
  const { tables, left_out } = lines ? { tables: tablesOf(null, lines), left_out: [] } : tablesOfFile(root ?? null);
  if (tables.length === 0) throw new Unreadable("This JSON file holds no list of records.");
  const said = left_out.length === 0 ? [] : [`Left out, because it is no list of records: ${left_out.slice(0, 10).join(", ")}${left_out.length > 10 ? " …" : ""}.`];
  return tables.map((table, at) => tableSheet(table, blob.size, options, at === 0 ? said : []));
}
