import { lookToCompare, MORNING_LOOKS_SETTING, readKeptLooks, recordsMark } from "./last-look.ts";

/** What of an import a sheet is worked out from: its rows, told by their checksums. */
export interface SheetImport {
  readonly id: string;
  readonly import_no: number;
  readonly origin: string;
  readonly tables: readonly { readonly table: string; readonly rows: number; readonly sha256: string }[];
}

/** Everything that a morning sheet depends on, tickets at the bench apart. */
export interface SheetGround {
  /** Version of the program; null while it runs from its sources, whose words change under way. */
  readonly program: string | null;
  /** Imports that can be read, in their order. */
  readonly imports: readonly SheetImport[];
  /** All settings of the ledger: names that are one, tickets that were settled, levels, hours, marks. */
  readonly settings: Readonly<Record<string, string>>;
  /** The reader's day. */
  readonly day: string;
  /** The browser's language, in which sentences are written where no other is set. */
  readonly locale: string;
}

/**
 * One word for all that a sheet is worked out from: the same word, the same sheet. Whatever of it changes gives another word, so that a
 * kept sheet is taken for today's only where working it out again would give the same.
 *
 * Of the kept looks, which the sheet itself writes, only the one counts that its changes are told against.
 *
 * @returns SHA-256, hex; null where the program has no version, and then nothing that was kept counts
 */
export async function sheetKey({ program, imports, settings, day, locale }: SheetGround): Promise<string | null> {
  if (program === null) return null;
  const { [MORNING_LOOKS_SETTING]: looks = null, ...others } = settings, before = lookToCompare(readKeptLooks(looks).looks, { day, records: recordsMark(imports) });
  const rows = imports.map(({ id, import_no, origin, tables }) => [id, import_no, origin, tables.map(({ table, rows: n, sha256 }) => [table, n, sha256])]);
  const ground = JSON.stringify([program, day, locale, before, rows, Object.entries(others).sort(([a], [b]) => (a < b ? -1 : 1))]);
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(ground)));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
