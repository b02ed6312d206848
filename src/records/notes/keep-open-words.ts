import type { Ledger } from "../ledger/ledger.ts";
import { OPEN_WORDS_SETTING, openAfter, openWordsText, readOpenWords, type OpenWords } from "./open-words.ts";

/**
 * Keeps what the notes of an import left open, and forgets what those left that are gone. No import comes in meanwhile, as the
 * words of one not seen yet would be taken for those of one that is gone.
 *
 * @param come null when an import went
 */
export async function keepOpenWords(ledger: Ledger, come: OpenWords | null): Promise<void> {
  if (come === null && (await ledger.setting(OPEN_WORDS_SETTING)) === null) return;
  await ledger.alone(async () => {
    const there = (await ledger.batches()).map(({ id }) => id);
    await ledger.changeSetting(OPEN_WORDS_SETTING, (kept) => openWordsText(openAfter(readOpenWords(kept).open, come, there)));
  });
}
