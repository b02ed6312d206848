/** Browsers that forbid storage throw where they are merely asked for it. */
function stored(): Storage | null {
  try {
    return globalThis.localStorage ?? null;
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

/** One choice about this screen, kept in this browser and outside the records, so that it stands at once and is not in the backup. */
export class ScreenChoice<Word extends string> {
  choice = $state.raw<Word>() as Word;

  /**
   * @param words what can be chosen; the first counts until something is
   * @param show makes the page follow
   */
  constructor(private readonly key: string, readonly words: readonly [Word, ...Word[]], private readonly show: (word: Word) => void) {
    this.choice = words[0];
  }

  /** Takes up the choice of last time; a word that is none counts as none. */
  recall(): void {
    const kept = stored()?.getItem(this.key);
    this.choice = this.words.find((one) => one === kept) ?? this.words[0];
    this.show(this.choice);
  }

  /** @param word one of `words`; another changes nothing */
  choose(word: string): void {
    this.choice = this.words.find((one) => one === word) ?? this.choice;
    stored()?.setItem(this.key, this.choice);
    this.show(this.choice);
  }
}
