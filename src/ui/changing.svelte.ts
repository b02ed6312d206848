import { sentence } from "./trouble.ts";

/** The last change the owner made in one place, with the way back. */
export class Changing {
  did = $state.raw<{ readonly words: string; readonly back: () => Promise<void> } | null>(null);
  trouble = $state<string | null>(null);

  /** Makes a change; what cannot be is said, and nothing is changed then. */
  async make(words: string, change: () => Promise<void>, back: () => Promise<void>): Promise<void> {
    this.trouble = null;
    try {
      await change();
      this.did = { words, back };
    } catch (error) {
      this.trouble = sentence(error);
    }
  }

  async undo(): Promise<void> {
    const last = this.did;
    if (!last) return;
    this.did = null;
    await last.back();
  }
}
