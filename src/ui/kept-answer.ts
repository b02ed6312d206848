/** The last answer to a slow question, so that going from page to page does not ask the same again. */
export class KeptAnswer<T> {
  #key: string | null = null;
  #answer: T | null = null;

  /** The kept answer when `key` is the one it was given for; else `work`'s, which is kept once it stands. */
  async of(key: string, work: () => Promise<T>): Promise<T> {
    if (this.#key === key && this.#answer !== null) return this.#answer;
    const answer = await work();
    [this.#key, this.#answer] = [key, answer];
    return answer;
  }
}
