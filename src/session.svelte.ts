import { recordsSpan } from "./answers/choices/choices.ts";
import { HAND_GROUPS_SETTING, handGroupsText, readHandGroups, type HandGroup } from "./answers/interchange/hand-groups.ts";
import { prepareAnswers } from "./answers/prepare.ts";
import type { Engine, Report } from "./db/engine.ts";
import { EngineGone } from "./db/errors.ts";
import { prepareTables } from "./db/prepare.ts";
import { Turns } from "./db/turns.ts";
import { watchedEngine } from "./db/watched-engine.ts";
import type { BenchStore } from "./records/bench-log/bench-store.ts";
import { ImportKept } from "./records/import-kept.ts";
import type { Imported, ImportOptions } from "./records/importing.ts";
import type { Settlement } from "./records/looking/remembered.ts";
import { shopLook, type ShopLook } from "./records/looking/shop-look.ts";
import type { Batch, Ledger, Reject } from "./records/ledger/ledger.ts";
import type { Keeping } from "./records/ledger/persist.ts";
import { loadVocabulary } from "./records/load-vocabulary.ts";
import { putTogether } from "./records/merging/put-together.ts";
import type { NamedFile } from "./records/reading/read-file.ts";
import { rebuild, type DamagedBatch } from "./records/rebuild.ts";
import { ShopWords } from "./shop-words.svelte.ts";
import { sentence } from "./ui/trouble.ts";
import { browser, demoAhead, ledgerOf, type Demo, type World } from "./world.ts";

/** The owner took the demo (or all) out and does not want it back by itself. */
const DEMO = "demo";

/** What every import is given. */
type Means = Pick<ImportOptions, "engine" | "ledger" | "today"> & Pick<World, "read">;

/** What the app remembers while it is open. */
export class Session extends ShopWords {
  /** "opening" until the records stand in the engine; "stopped" when they cannot, with the reason in `trouble`. */
  status = $state.raw<"opening" | "ready" | "stopped">("opening");
  /** Set while `status` is "ready"; another one after a restart, so read it where you use it. */
  engine = $state.raw<Engine | null>(null);
  /** Goes up whenever the records changed: read it in what must be asked anew. */
  version = $state(0);
  /** Imports whose rows are in the engine, oldest first. */
  batches = $state.raw<readonly Batch[]>([]);
  /** Imports that cannot be read back, and why. */
  damaged = $state.raw<readonly DamagedBatch[]>([]);
  /** Day the answers are given for: the newest day written in the demo while it is open, else the reader's today. */
  today = $state("");
  /** A plain sentence about what went wrong, else null. */
  trouble = $state<string | null>(null);
  /** How far the slow part of opening has come. */
  progress = $state.raw<Parameters<Report>[0] | null>(null);
  keeping = $state.raw<Keeping | "not at all">("unknown");

  #world: World | null = null;
  #ledger: Ledger | null = null;
  readonly #turns = new Turns();
  #reviving = false;

  /** True while the records shown are the invented shop's. */
  get demo(): boolean { return this.batches.some((batch) => batch.origin === "demo"); }

  /** True when there are no records at all. */
  get bare(): boolean { return this.batches.length === 0; }

  /** The reader's today, also while the demo is open. */
  get day(): string { return this.#at.world.day(); }

  /** The way to look at files before they come in. */
  get look(): ShopLook { return shopLook(this.#at.world.look, { ...this.#open, demo: this.demo }); }

  /** Tickets at the bench: apart from the records, and in the backup with them. */
  bench(): Promise<BenchStore> { return this.#at.world.openBench(); }

  get #at(): { world: World; ledger: Ledger } {
    if (!this.#world || !this.#ledger) throw new RangeError("Session: needs start() before anything else");
    return { world: this.#world, ledger: this.#ledger };
  }

  protected override get kept(): Ledger { return this.#at.ledger; }

  get #open(): Means {
    const { ledger, world } = this.#at, engine = this.engine;
    if (!engine) throw new EngineGone("The engine is not open.");
    return { engine, ledger, today: world.day(), read: world.read };
  }

  /** Opens everything, and the demo at a first visit. Never rejects: see `status` and `trouble`. */
  async start(world: World = browser): Promise<void> {
    this.#world = world;
    try {
      const opening = world.openEngine();
      // Whoever waits for it is told below; the ledger may fail before.
      opening.catch(() => undefined);
      const early = world.firstTime?.() ? demoAhead(world) : null;
      const { ledger, unkept } = await ledgerOf(world);
      this.#ledger = ledger;
      const demo = (await this.#isFirstVisit()) ? early ?? demoAhead(world) : null;
      this.keeping = unkept ? "not at all" : await world.keeping(false);
      if (unkept) this.trouble = `${sentence(unkept)} Until this is put right, what you bring in is gone when you close this window.`;
      ledger.onChange(() => void this.#inTurn(() => this.#refill()).catch((fault: unknown) => (this.trouble = sentence(fault))));
      const engine = await opening;
      await this.#inTurn(() => this.#furnish(engine));
      if (!demo || !(await world.alone(() => this.#firstVisit(demo)))) await this.#inTurn(() => this.#refill());
      this.status = "ready";
    } catch (error) {
      this.#stop(error);
    }
  }

  #stop(error: unknown): void {
    this.status = "stopped";
    this.engine = null;
    this.trouble = sentence(error);
  }

  async #isFirstVisit(): Promise<boolean> {
    const { ledger } = this.#at;
    return (await ledger.batches()).length === 0 && (await ledger.setting(DEMO)) !== "no";
  }

  /** Opens the demo unless another tab did meanwhile. @returns whether the engine holds it */
  async #firstVisit(demo: Demo): Promise<boolean> {
    if (!(await this.#isFirstVisit())) return false;
    try {
      await this.#inTurn(() => this.#takeDemo(demo, new AbortController().signal, (progress) => (this.progress = progress)));
      return true;
    } catch (error) {
      this.trouble = `The demo could not be opened. ${sentence(error)}`;
      return false;
    }
  }

  /** Makes the tables and fills the trade's lists. */
  async #furnish(engine: Engine): Promise<void> {
    this.engine = watchedEngine(engine, (error) => this.#revive(error));
    await prepareTables(this.engine);
    await loadVocabulary(this.engine);
  }

  /** Makes the engine hold what the ledger holds. */
  async #refill(): Promise<void> {
    const { ledger } = this.#at, engine = this.engine;
    if (!engine) return;
    const { damaged } = await rebuild(engine, ledger, (progress) => (this.progress = progress));
    this.damaged = damaged;
    await this.#tell(engine);
  }

  /** Says what there is, once the engine holds it. */
  async #tell(engine: Engine): Promise<void> {
    const { ledger, world } = this.#at;
    await prepareAnswers(engine, readHandGroups(await ledger.setting(HAND_GROUPS_SETTING)).groups);
    const readable = ({ id }: Batch) => this.damaged.every(({ batch }) => batch.id !== id);
    this.batches = (await ledger.batches()).filter(readable);
    const faults = await this.recallWords(this.demo);
    if (faults.length > 0) this.trouble = faults.join(" ");
    this.today = (this.demo ? (await recordsSpan(engine)).latest : null) ?? world.day();
    this.version += 1;
  }

  #revive(error: EngineGone): void {
    if (this.#reviving || this.status !== "ready") return;
    this.#reviving = true;
    this.trouble = sentence(error);
    const again = async () => {
      await this.#furnish(await this.#at.world.openEngine());
      await this.#refill();
    };
    void this.#inTurn(again).catch((fault: unknown) => this.#stop(fault)).finally(() => (this.#reviving = false));
  }

  /** One change after the other, whether the one before succeeded or not. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> { return this.#turns.take(work); }

  /** Takes in, and shows what came. */
  async #take(work: (open: Means) => Promise<Imported>): Promise<Imported> {
    const open = this.#open;
    try {
      const imported = await work(open);
      await this.#tell(open.engine);
      return imported;
    } catch (error) {
      if (!(error instanceof ImportKept)) throw error;
      // The rows are on the disk and only the screen is behind; an engine that died is being filled anew already.
      if (!(error.cause instanceof EngineGone)) await this.#refill();
      return { ...error.batch, kept: true, rejects: [] };
    }
  }

  async #takeDemoOut(): Promise<void> {
    const { ledger } = this.#at;
    for (const batch of this.batches) if (batch.origin === "demo") await ledger.remove(batch.id);
    await ledger.keepSetting(DEMO, "no");
    await this.forgetDemoWords();
    await this.#refill();
  }

  /**
   * Takes files in, whole or not at all. Demo records go out first, and stay out whatever becomes of the files.
   *
   * @throws what `importFiles` throws; the signal's reason when cancelled
   */
  bringIn(files: readonly NamedFile[], signal: AbortSignal, report: Report, settlement: Settlement = { answers: [], instead_of: null }): Promise<Imported> {
    return this.#inTurn(async () => {
      if (this.demo) await this.#takeDemoOut();
      const { rememberAll } = await import("./records/looking/remembered.ts"), { importFiles } = await import("./records/importing.ts");
      const answers = await rememberAll(this.#at.ledger, settlement.answers);
      const { instead_of } = settlement, place = instead_of ? { instead_of: instead_of.id } : {};
      const read = () => this.#take((open) => importFiles(files, { ...open, ...place, origin: settlement.origin ?? "files", answers, signal, report }));
      const batch = await (instead_of ? this.#filledAgain(read) : read());
      if (this.keeping !== "not at all") this.keeping = await this.#at.world.keeping(true);
      return batch;
    });
  }

  /** An import whose files are read again stays in the ledger until the new one is written; when that fails the engine may be without it. */
  async #filledAgain(read: () => Promise<Imported>): Promise<Imported> {
    try {
      return await read();
    } catch (error) {
      await this.#refill();
      throw error;
    }
  }

  /** @throws {RangeError} when there are records already: invented and real ones never mix */
  openDemo(signal: AbortSignal, report: Report): Promise<Imported> {
    return this.#inTurn(async () => {
      if (!this.bare) throw new RangeError(`Session.openDemo: needs to have no records, has ${this.batches.length} imports`);
      const { world } = this.#at;
      return this.#takeDemo({ files: world.demoFiles(), read: Promise.resolve(world.read) }, signal, report);
    });
  }

  async #takeDemo(demo: Demo, signal: AbortSignal, report: Report): Promise<Imported> {
    report({ step: "Opening the demo shop", done: 0, total: null });
    const { importFiles } = await import("./records/importing.ts"), files = await demo.files, read = await demo.read;
    const batch = await this.#take((open) => importFiles(files, { ...open, read, origin: "demo", signal, report }));
    await this.#at.ledger.keepSetting(DEMO, null);
    return batch;
  }

  /** Takes the invented shop out, so that real records can begin. */
  putDemoAway(): Promise<void> { return this.#inTurn(() => this.#takeDemoOut()); }

  /** Takes one import out again. */
  takeOut(batch: Batch): Promise<void> {
    return this.#without(async (ledger) => {
      await ledger.remove(batch.id);
      if (batch.origin === "demo") await this.forgetDemoWords();
    });
  }

  /** Takes out all records, and what is at the bench. */
  removeAll(): Promise<void> {
    return this.#without(async (ledger) => {
      await ledger.clear();
      await (await this.bench()).clear();
    });
  }

  #without(remove: (ledger: Ledger) => Promise<void>): Promise<void> {
    return this.#inTurn(async () => {
      const { ledger } = this.#at;
      await remove(ledger);
      await ledger.keepSetting(DEMO, "no");
      await this.#refill();
    });
  }

  /** All records, rows to fix, settings and what is at the bench as one zip file. */
  backup(): Promise<Blob> {
    return this.#inTurn(async () => (await import("./records/backup.ts")).backUp({ ...this.#open, bench: await this.bench() }));
  }

  /** Puts a backup in the place of everything, or leaves everything as it is. @throws {BackupRefused} and what imports throw */
  restore(file: Blob, signal: AbortSignal, report: Report): Promise<Imported> {
    return this.#inTurn(async () => {
      const { restore } = await import("./records/backup.ts"), bench = await this.bench();
      const imported = await this.#take((open) => restore(file, { ...open, bench, signal, report }));
      // What could not be read back before is gone with the rest.
      await this.#refill();
      return imported;
    });
  }

  /** Asks the engine and the ledger what is to be decided, and what was. */
  async consult<T>(ask: (engine: Engine, ledger: Ledger) => Promise<T>): Promise<T> {
    const { engine, ledger } = this.#open;
    return ask(engine, ledger);
  }

  /** Remembers what the owner decided, and shows what follows from it. */
  decide(work: (ledger: Ledger) => Promise<void>): Promise<void> {
    return this.#inTurn(async () => {
      const { engine, ledger } = this.#open;
      await work(ledger);
      await putTogether(engine, ledger);
      await this.#tell(engine);
    });
  }

  /** Keeps which parts are the same thing, and shows what follows. @throws {RangeError} if one of them cannot be; then nothing is changed */
  async keepHandGroups(groups: readonly HandGroup[]): Promise<void> {
    const text = handGroupsText(groups);
    await this.#inTurn(async () => {
      await this.#at.ledger.keepSetting(HAND_GROUPS_SETTING, groups.length === 0 ? null : text);
      await this.#tell(this.#open.engine);
    });
  }

  /** Rows kept out, of all imports. */
  async rejects(): Promise<readonly Reject[]> { return this.#at.ledger.rejects(); }
}

export const session = new Session();
