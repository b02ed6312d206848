import type { NamedFile, ReadFile, ReadOptions } from "./reading/read-file.ts";
import type { StagedRows } from "./reading/filling.ts";

interface Ahead {
  readonly rows: readonly StagedRows[];
  readonly done: ReturnType<ReadFile>;
}

/** Something is known about the file that was not when it was read ahead. The list of reels does not count: our own tables need none. */
const knows = ({ mapping, answers, remembered = [], book }: ReadOptions) =>
  mapping !== null || (answers ?? null) !== null || remembered.length > 0 || (book ?? null) !== null;

/**
 * Begins to read files of our own tables before anybody can take their rows, one after the other, and gives the way to read them: what was
 * read ahead is handed on, any other file or the same one asked for differently is read then.
 *
 * All rows stay in memory until they are taken, so this is for few.
 */
export function readAhead(files: readonly NamedFile[], last_day: string, read: ReadFile): ReadFile {
  const signal = new AbortController().signal, report = () => undefined;
  const ahead = new Map<Blob, Ahead & { readonly file_no: number }>();
  let before: Promise<unknown> = Promise.resolve();
  for (const [at, file] of files.entries()) {
    const rows: StagedRows[] = [], file_no = at + 1;
    const options: ReadOptions = { file_no, mapping: null, last_day, signal, report, take: async (some) => void rows.push(some) };
    const done = before.then(() => read(file, options));
    before = done.catch(() => undefined);
    ahead.set(file.blob, { rows, done, file_no });
  }
  return async (file, options) => {
    const early = ahead.get(file.blob);
    if (!early || early.file_no !== options.file_no || options.last_day !== last_day || knows(options)) return read(file, options);
    ahead.delete(file.blob);
    options.signal.throwIfAborted();
    const done = await early.done;
    for (const rows of early.rows) await options.take(rows);
    return done;
  };
}
