import { HAND_GROUPS_SETTING, handGroupsText, readHandGroups, type HandGroup } from "./answers/interchange/hand-groups.ts";
import type { Engine, Report } from "./db/engine.ts";
import { deriveRest } from "./db/prepare.ts";
import { DEMO, OpenedShop, WITHOUT_DEMO } from "./opened-shop.svelte.ts";
import type { BenchStore } from "./records/bench-log/bench-store.ts";
import type { Imported } from "./records/importing.ts";
import type { Settlement } from "./records/looking/remembered.ts";
import { shopLook, type ShopLook } from "./records/looking/shop-look.ts";
import { listTogether } from "./records/ledger/changes-together.ts";
import type { Batch, Ledger, Reject } from "./records/ledger/ledger.ts";
import { keepOpenWords } from "./records/notes/keep-open-words.ts";
import type { OpenWords } from "./records/notes/open-words.ts";
import { writesUnderWay } from "./records/ledger/write-count.ts";
import type { NamedFile } from "./records/reading/read-file.ts";

/** What the app remembers while it is open, and what may be done with the records. */
export class Session extends OpenedShop {
  /** The reader's today, also while the demo is open. */
  get day(): string { return this.place.world.day(); }

  /** True while something of this window is on its way to the disk. */
  get writing(): boolean { return writesUnderWay() > 0; }

  /** The way to look at files before they come in. */
  get look(): ShopLook { return shopLook(this.place.world.look, { ...this.means, demo: this.demo }); }

  /** Derives what opening put off, unless a question has had it made already. */
  async deriveRest(): Promise<void> {
    if (this.engine) await deriveRest(this.engine);
  }

  /** Tickets at the bench: apart from the records, and in the backup with them. */
  bench(): Promise<BenchStore> { return this.place.world.openBench(); }

  private async takeDemoOut(): Promise<void> {
    const { ledger } = this.place;
    for (const { id, origin } of await ledger.batches()) if (origin === "demo") await ledger.remove(id, WITHOUT_DEMO);
    await this.refill();
  }

  /**
   * Takes files in, whole or not at all. Demo records go out first, and stay out whatever becomes of the files.
   *
   * @throws what `importFiles` throws; the signal's reason when cancelled
   */
  bringIn(files: readonly NamedFile[], signal: AbortSignal, report: Report, settlement: Settlement = { answers: [], instead_of: null }): Promise<Imported> {
    return this.inTurn(async () => {
      const { ledger } = this.place;
      if ((await ledger.batches()).some(({ origin }) => origin === "demo")) await this.takeDemoOut();
      const { rememberAll } = await import("./records/looking/remembered.ts"), { importFiles } = await import("./records/importing.ts");
      const answers = await rememberAll(ledger, settlement.answers);
      const { instead_of } = settlement, place = instead_of ? { instead_of: instead_of.id } : {};
      const read = () => this.take((open) => importFiles(files, { ...open, ...place, origin: settlement.origin ?? "files", answers, signal, report }));
      const batch = await (instead_of ? this.filledAgain(read) : read());
      if (this.keeping !== "not at all") this.keeping = await this.place.world.keeping(true);
      return batch;
    });
  }

  /** An import whose files are read again stays in the ledger until the new one is written; when that fails the engine may be without it. */
  private async filledAgain(read: () => Promise<Imported>): Promise<Imported> {
    try {
      return await read();
    } catch (error) {
      await this.refill();
      throw error;
    }
  }

  /** @throws {RangeError} when there are records already: invented and real ones never mix */
  openDemo(signal: AbortSignal, report: Report): Promise<Imported> {
    return this.inTurn(async () => {
      if (!this.bare) throw new RangeError(`Session.openDemo: needs to have no records, has ${this.batches.length} imports`);
      const { world } = this.place;
      return this.takeDemo({ files: world.demoFiles(), read: Promise.resolve(world.read) }, signal, report);
    });
  }

  /** Takes the invented shop out, so that real records can begin. */
  putDemoAway(): Promise<void> { return this.inTurn(() => this.takeDemoOut()); }

  /** Takes one import out again. */
  takeOut(batch: Batch): Promise<void> {
    return this.without((ledger) => ledger.remove(batch.id, batch.origin === "demo" ? WITHOUT_DEMO : { [DEMO]: "no" }));
  }

  /** Takes out all records, and what is at the bench. */
  removeAll(): Promise<void> {
    return this.without(async (ledger) => {
      await ledger.clear({ [DEMO]: "no" });
      await (await this.bench()).clear();
    });
  }

  private without(remove: (ledger: Ledger) => Promise<unknown>): Promise<void> {
    return this.inTurn(async () => {
      await remove(this.place.ledger);
      await this.keepOpenWords(null);
      await this.refill();
    });
  }

  /** All records, rows to fix, settings and what is at the bench as one zip file. */
  backup(): Promise<Blob> {
    return this.inTurn(async () => (await import("./records/backup.ts")).backUp({ ...this.means, bench: await this.bench() }));
  }

  /** Puts a backup in the place of everything, or leaves everything as it is. @throws {BackupRefused} and what imports throw */
  restore(file: Blob, signal: AbortSignal, report: Report): Promise<Imported> {
    return this.inTurn(async () => {
      const { restore } = await import("./records/backup.ts"), bench = await this.bench();
      const imported = await this.take((open) => restore(file, { ...open, bench, signal, report }));
      // What could not be read back before is gone with the rest.
      await this.refill();
      return imported;
    });
  }

  /** Asks the engine and the ledger what is to be decided, and what was. */
  async consult<T>(ask: (engine: Engine, ledger: Ledger) => Promise<T>): Promise<T> {
    const { engine, ledger } = this.means;
    return ask(engine, ledger);
  }

  /** Remembers what the owner decided, and shows what follows from it. */
  decide(work: (ledger: Ledger) => Promise<void>): Promise<void> {
    return this.inTurn(async () => {
      const { engine, ledger } = this.means;
      await work(ledger);
      await this.putTogether();
      await this.tell(engine);
    });
  }

  /** Keeps which parts are the same thing, and shows what follows. @throws {RangeError} if one of them cannot be; then nothing is changed */
  async keepHandGroups(groups: readonly HandGroup[], seen = this.hand_groups): Promise<void> {
    const plain = (list: readonly HandGroup[]) => readHandGroups(handGroupsText(list)).groups, [from, wanted] = [plain(seen), plain(groups)];
    await this.inTurn(async () => {
      await this.place.ledger.changeSetting(HAND_GROUPS_SETTING, (kept) => {
        const all = listTogether(from, wanted, readHandGroups(kept).groups);
        return all.length === 0 ? null : handGroupsText(all);
      });
      await this.tell(this.means.engine);
    });
  }

  /** Sentences that stand already are written anew. @throws {RangeError} if it is no locale */
  override async keepWriting(locale: string | null): Promise<void> {
    await super.keepWriting(locale);
    this.version += 1;
  }

  /** Keeps what the notes of an import left open, so that the morning sheet can tell of it. */
  keepOpenWords(come: OpenWords | null): Promise<void> { return keepOpenWords(this.place.ledger, come); }

  /** Rows kept out, of all imports. */
  async rejects(): Promise<readonly Reject[]> { return this.place.ledger.rejects(); }
}

export const session = new Session();
