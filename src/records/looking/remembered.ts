import type { Batch, Ledger } from "../ledger/ledger.ts";
import { answersFrom, answersText } from "../understanding/answers-text.ts";
import type { Answers } from "../understanding/answers.ts";
import { settingName } from "../understanding/shape-key.ts";

/** What the owner settled for one file that comes in. */
export interface FileAnswers {
  /** The file's name. */
  readonly file: string;
  readonly answers: Answers;
  /** The answers are kept for all files of this shape. */
  readonly shape_key: string;
}

/** What was settled for files that come in together. */
export interface Settlement {
  readonly answers: readonly FileAnswers[];
  /** An import of the very same files, which is taken out first. */
  readonly instead_of: Batch | null;
  /** Where they come from, when not from the owner's own files. */
  readonly origin?: Batch["origin"];
}

/** Keeps the answers for all files of a shape, in the place of those before; null forgets them. */
export async function remember(ledger: Ledger, shape_key: string, answers: Answers | null): Promise<void> {
  await ledger.keepSetting(settingName(shape_key), answers && answersText(answers));
}

/** Changes the answers as they are kept now: another window may have changed others of them. @param shown what was changed here, where nothing is kept any more */
export async function correct(ledger: Ledger, shape_key: string, shown: Answers, change: (answers: Answers) => Answers): Promise<void> {
  await ledger.changeSetting(settingName(shape_key), (kept) => answersText(change(kept === null ? shown : answersFrom(kept))));
}

/** Keeps the answers, and gives them by the files' names. */
export async function rememberAll(ledger: Ledger, all: readonly FileAnswers[]): Promise<ReadonlyMap<string, Answers>> {
  for (const { shape_key, answers } of all) await remember(ledger, shape_key, answers);
  return new Map(all.map(({ file, answers }) => [file, answers]));
}
