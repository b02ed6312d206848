import type { Ledger } from "../../records/ledger/ledger.ts";
import { spellingFault, withSpelling, withoutSpelling } from "../../records/notes/own-spellings.ts";
import type { Meaning, OwnSpelling } from "../../records/notes/own-spellings.ts";
import { SPELLING_SETTING, spellingsFrom, spellingsText } from "../../records/notes/spellings-text.ts";

/** The shop's spelling book as it is kept, and as it changes while it is on the screen. */
export class Spellings {
  entries = $state.raw<readonly OwnSpelling[]>([]);
  /** Lines that cannot be used, one sentence each. */
  faults = $state.raw<readonly string[]>([]);

  async load(ledger: Ledger): Promise<void> {
    const { entries, faults } = spellingsFrom(await ledger.setting(SPELLING_SETTING));
    [this.entries, this.faults] = [entries, faults];
  }

  /** @returns what is wrong with the line, in the owner's words; null when it is kept */
  async keep(ledger: Ledger, spelling: string, meaning: Meaning): Promise<string | null> {
    const entry: OwnSpelling = { spelling: spelling.trim(), reel_kind: null, ...meaning }, fault = spellingFault(entry);
    if (fault === null) await this.write(ledger, withSpelling((await this.kept(ledger)), entry));
    return fault;
  }

  async drop(ledger: Ledger, { spelling, reel_kind }: OwnSpelling): Promise<void> {
    await this.write(ledger, withoutSpelling(await this.kept(ledger), spelling, reel_kind));
  }

  /** Takes a line up again that was dropped, for its kind of reel too. */
  async putBack(ledger: Ledger, entry: OwnSpelling): Promise<void> {
    await this.write(ledger, withSpelling(await this.kept(ledger), entry));
  }

  /** Another tab may have written meanwhile. */
  private async kept(ledger: Ledger): Promise<readonly OwnSpelling[]> {
    return spellingsFrom(await ledger.setting(SPELLING_SETTING)).entries;
  }

  private async write(ledger: Ledger, entries: readonly OwnSpelling[]): Promise<void> {
    await ledger.keepSetting(SPELLING_SETTING, entries.length === 0 ? null : spellingsText(entries));
    await this.load(ledger);
  }
}

export const spellings = new Spellings();
