import { recordsSpan } from "./answers/choices/choices.ts";
import { HAND_GROUPS_SETTING, readHandGroups } from "./answers/interchange/hand-groups.ts";
import { recordsMark } from "./answers/morning/last-look.ts";
import { sheetKey } from "./answers/morning/sheet-key.ts";
import { prepareAnswers } from "./answers/prepare.ts";
import type { Engine, Report } from "./db/engine.ts";
import { deriveInTime } from "./db/derive-in-time.ts";
import { EngineGone } from "./db/errors.ts";
import { deriveRest, prepareTables } from "./db/prepare.ts";
import { Turns } from "./db/turns.ts";
import { watchedEngine } from "./db/watched-engine.ts";
import { ImportKept } from "./records/import-kept.ts";
import type { Imported, ImportOptions } from "./records/importing.ts";
import type { Batch, Changed, Ledger } from "./records/ledger/ledger.ts";
import type { Keeping } from "./records/ledger/persist.ts";
import { loadVocabulary } from "./records/load-vocabulary.ts";
import { decidedText, putTogether } from "./records/merging/put-together.ts";
import { isInStep, rebuild, type DamagedBatch, type Filling } from "./records/rebuild.ts";
import { ShopWords, WITHOUT_DEMO_WORDS } from "./shop-words.svelte.ts";
import { TablesAhead } from "./records/tables-ahead.ts";
import { sentence } from "./ui/trouble.ts";
import { during } from "./ui/unfinished.ts";
import { browserLocale } from "./way-of-writing.ts";
import { browser, demoAhead, ledgerOf, type Demo, type World } from "./world.ts";

/** The owner took the demo (or all) out and does not want it back by itself. */
export const DEMO = "demo";

/** The demo goes out together with what was written over it: another window that has it out already may have begun to write for real. */
export const WITHOUT_DEMO: Changed = { ...WITHOUT_DEMO_WORDS, [DEMO]: "no" };

/** What every import is given. */
type Means = Pick<ImportOptions, "engine" | "ledger" | "today"> & Pick<World, "read">;

/** The shop's records as they are opened and kept in step with the engine; what may be done with them is the session's. */
export abstract class OpenedShop extends ShopWords {
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

  /** The last morning sheet as text, made from these records, until a newer one stands; else null. */
  kept_sheet = $state.raw<string | null>(null);
  /** What a sheet of today would be worked out from (`sheetKey`), as it was told while the records were being opened. */
  opening_key = $state.raw<string | null>(null);

  private where: World | null = null;
  private held: Ledger | null = null;
  private readonly turns = new Turns();
  private reviving = false;
  /** Another window changed something that is not shown yet. */
  private behind = false;
  /** What the engine's rows were put together by, as it was read before that; null where another window has to be followed in full. */
  private decided: string | null = null;

  /** True while the records shown are the invented shop's. */
  get demo(): boolean { return this.batches.some((batch) => batch.origin === "demo"); }

  /** True when there are no records at all. */
  get bare(): boolean { return this.batches.length === 0; }

  protected get place(): { world: World; ledger: Ledger } {
    if (!this.where || !this.held) throw new RangeError("OpenedShop: needs start() before anything else");
    return { world: this.where, ledger: this.held };
  }

  protected override get kept(): Ledger { return this.place.ledger; }

  protected get means(): Means {
    const { ledger, world } = this.place, engine = this.engine;
    if (!engine) throw new EngineGone("The engine is not open.");
    return { engine, ledger, today: world.day(), read: world.read };
  }

  /** Opens everything, and the demo at a first visit. Never rejects: see `status` and `trouble`. */
  async start(world: World = browser): Promise<void> {
    this.where = world;
    try {
      const opening = world.openEngine();
      // Whoever waits for it is told below; the ledger may fail before.
      opening.catch(() => undefined);
      const early = world.firstTime?.() ? demoAhead(world) : null;
      const { ledger, unkept } = await ledgerOf(world);
      this.held = ledger;
      const demo = (await this.isFirstVisit()) ? early ?? demoAhead(world) : null;
      this.keeping = unkept ? "not at all" : await world.keeping(false);
      if (unkept) this.trouble = `${sentence(unkept)} Until this is put right, what you bring in is gone when you close this window.`;
      const kept = await ledger.batches(), sheet = demo ? null : world.keptSheet?.(recordsMark(kept)) ?? null;
      // Both at once, or today's sheet would be taken for an old one at first sight.
      [this.opening_key, this.kept_sheet] = [sheet === null ? null : await this.keyOf(kept), sheet];
      ledger.onChange(() => this.followOthers());
      const tables = new TablesAhead(ledger, kept), engine = await opening;
      await this.inTurn(() => this.furnish(engine));
      if (!demo || !(await world.alone(() => this.firstVisit(demo)))) await this.inTurn(() => this.refill({ derive: "first", tables }));
      this.status = "ready";
    } catch (error) {
      this.stop(error);
    }
  }

  /** What a sheet is worked out from now (`sheetKey`), once nothing is being written or read in: engine and settings are of one moment then. */
  sheetKey(): Promise<string | null> { return this.turns.take(() => this.keyOf(this.batches)); }

  private async keyOf(batches: readonly Batch[]): Promise<string | null> {
    const { ledger, world } = this.place;
    return sheetKey({ program: world.program?.() ?? null, imports: batches.filter(({ broken }) => !broken), settings: await ledger.settings(), day: world.day(), locale: browserLocale() });
  }

  /** Keeps the morning sheet for the next opening, when it can stand there while records are read. */
  keepSheet(text: string): void {
    this.kept_sheet = text;
    this.place.world.keepSheet?.({ mark: recordsMark(this.batches), text });
  }

  /** A sheet made from other records is none of these. */
  private forgetSheet(mark: string): void {
    if (mark === recordsMark(this.batches)) return;
    this.kept_sheet = null;
    this.place.world.keepSheet?.(null);
  }

  /** Shows what other windows changed; all they changed before its turn comes is shown at once. */
  private followOthers(): void {
    if (this.behind) return;
    this.behind = true;
    const follow = async () => {
      this.behind = false;
      const { engine } = this, { ledger } = this.place;
      if (engine && this.decided === (await decidedText(ledger)) && (await isInStep(engine, ledger))) await this.tell(engine);
      else await this.refill();
    };
    void this.inTurn(follow).catch((fault: unknown) => (this.trouble = sentence(fault)));
  }

  private stop(error: unknown): void {
    this.status = "stopped";
    this.engine = null;
    this.trouble = sentence(error);
  }

  private async isFirstVisit(): Promise<boolean> {
    const { ledger } = this.place;
    return (await ledger.batches()).length === 0 && (await ledger.setting(DEMO)) !== "no";
  }

  /** Opens the demo unless another tab did meanwhile. @returns whether the engine holds it */
  private async firstVisit(demo: Demo): Promise<boolean> {
    if (!(await this.isFirstVisit())) return false;
    try {
      await this.inTurn(() => this.takeDemo(demo, new AbortController().signal, (progress) => (this.progress = progress)));
      return true;
    } catch (error) {
      this.trouble = `The demo could not be opened. ${sentence(error)}`;
      return false;
    }
  }

  /** Makes the tables and fills the trade's lists. */
  private async furnish(engine: Engine): Promise<void> {
    this.engine = watchedEngine(deriveInTime(engine), (error) => this.revive(error));
    await prepareTables(this.engine);
    await loadVocabulary(this.engine);
  }

  /** Makes the engine hold what the ledger holds. */
  protected async refill(how: Pick<Filling, "derive" | "tables"> = {}): Promise<void> {
    const { ledger } = this.place, engine = this.engine;
    if (!engine) return;
    const decided = await decidedText(ledger);
    this.decided = null;
    const { damaged } = await rebuild(engine, ledger, { ...how, report: (progress) => (this.progress = progress) });
    [this.damaged, this.decided] = [damaged, decided];
    await this.tell(engine);
  }

  /** Derives everything from the rows as it is decided now. */
  protected async putTogether(): Promise<void> {
    const { engine, ledger } = this.means, decided = await decidedText(ledger);
    this.decided = null;
    await putTogether(engine, ledger);
    this.decided = decided;
  }

  /** Says what there is, once the engine holds it. */
  protected async tell(engine: Engine): Promise<void> {
    const { ledger, world } = this.place;
    await prepareAnswers(engine, readHandGroups(await ledger.setting(HAND_GROUPS_SETTING)).groups);
    const readable = ({ id }: Batch) => this.damaged.every(({ batch }) => batch.id !== id), all = await ledger.batches(), opening = this.batches.length === 0 && this.version === 0;
    if (!opening) this.forgetSheet(recordsMark(all));
    this.batches = all.filter(readable);
    const faults = await this.recallWords(this.demo);
    if (faults.length > 0) this.trouble = faults.join(" ");
    this.today = (this.demo ? (await recordsSpan(engine)).latest : null) ?? world.day();
    this.version += 1;
  }

  private revive(error: EngineGone): void {
    if (this.reviving || this.status !== "ready") return;
    this.reviving = true;
    this.trouble = sentence(error);
    const again = async () => {
      await this.furnish(await this.place.world.openEngine());
      await this.refill();
    };
    void this.inTurn(again).catch((fault: unknown) => this.stop(fault)).finally(() => (this.reviving = false));
  }

  /** One change after the other, whether the one before succeeded or not. */
  protected inTurn<T>(work: () => Promise<T>): Promise<T> { return during("your records are written", () => this.turns.take(work)); }

  /** Takes in, and shows what came. */
  protected async take(work: (open: Means) => Promise<Imported>): Promise<Imported> {
    const open = this.means, decided = await decidedText(open.ledger);
    // What was put off is of the records as they are now, not of half an import.
    await deriveRest(open.engine);
    this.decided = null;
    try {
      const imported = await work(open);
      this.decided = decided;
      await this.tell(open.engine);
      return imported;
    } catch (error) {
      if (!(error instanceof ImportKept)) throw error;
      // The rows are on the disk and only the screen is behind; an engine that died is being filled anew already.
      if (!(error.cause instanceof EngineGone)) await this.refill();
      return { ...error.batch, kept: true, rejects: [] };
    }
  }

  protected async takeDemo(demo: Demo, signal: AbortSignal, report: Report): Promise<Imported> {
    report({ step: "Opening the demo shop", done: 0, total: null });
    const { importFiles } = await import("./records/importing.ts"), files = await demo.files, read = await demo.read;
    const batch = await this.take((open) => importFiles(files, { ...open, read, origin: "demo", signal, report }));
    await this.place.ledger.keepSetting(DEMO, null);
    return batch;
  }
}
