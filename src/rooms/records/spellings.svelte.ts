import type { Ledger } from "../../records/ledger/ledger.ts";
import { withReading, withoutReading, type OwnReading } from "../../records/notes/own-readings.ts";
import { spellingFault, withSpelling, withoutSpelling } from "../../records/notes/own-spellings.ts";
import type { Meaning, OwnSpelling } from "../../records/notes/own-spellings.ts";
import { SPELLING_SETTING, spellingsFrom, spellingsText, type ReadSpellings } from "../../records/notes/spellings-text.ts";

/** The shop's spelling book as it is kept, and as it changes while it is on the screen. */
export class Spellings {
  entries = $state.raw<readonly OwnSpelling[]>([]);
  /** What was said of readings that were not sure. */
  readings = $state.raw<readonly OwnReading[]>([]);
  /** Lines that cannot be used, one sentence each. */
  faults = $state.raw<readonly string[]>([]);

  async load(ledger: Ledger): Promise<void> {
    this.show(spellingsFrom(await ledger.setting(SPELLING_SETTING)));
  }

  /** @returns what is wrong with the line, in the owner's words; null when it is kept */
  async keep(ledger: Ledger, spelling: string, meaning: Meaning): Promise<string | null> {
    const entry: OwnSpelling = { spelling: spelling.trim(), reel_kind: null, ...meaning }, fault = spellingFault(entry);
    if (fault !== null) return fault;
    await this.change(ledger, ({ entries, readings }) => ({ entries: withSpelling(entries, entry), readings }));
    return null;
  }

  async drop(ledger: Ledger, { spelling, reel_kind }: OwnSpelling): Promise<void> {
    await this.change(ledger, ({ entries, readings }) => ({ entries: withoutSpelling(entries, spelling, reel_kind), readings }));
  }

  async keepReading(ledger: Ledger, reading: OwnReading): Promise<void> {
    await this.change(ledger, ({ entries, readings }) => ({ entries, readings: withReading(readings, reading) }));
  }

  async dropReading(ledger: Ledger, reading: OwnReading): Promise<void> {
    await this.change(ledger, ({ entries, readings }) => ({ entries, readings: withoutReading(readings, reading) }));
  }

  /** Takes a line up again that was dropped, for its kind of reel too. */
  async putBack(ledger: Ledger, entry: OwnSpelling): Promise<void> {
    await this.change(ledger, ({ entries, readings }) => ({ entries: withSpelling(entries, entry), readings }));
  }

  private show({ entries, readings, faults }: ReadSpellings): void {
    [this.entries, this.readings, this.faults] = [entries, readings, faults];
  }

  /** Changes the book as it is kept now: another window may have written since it was read. */
  private async change(ledger: Ledger, change: (book: Omit<ReadSpellings, "faults">) => Omit<ReadSpellings, "faults">): Promise<void> {
    this.show(spellingsFrom(await ledger.changeSetting(SPELLING_SETTING, (kept) => {
      const { entries, readings } = change(spellingsFrom(kept));
      return entries.length + readings.length === 0 ? null : spellingsText(entries, readings);
    })));
  }
}

export const spellings = new Spellings();
