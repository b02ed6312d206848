import { keptLooksText, looksAfter, lookToCompare, MORNING_LOOKS_SETTING, readKeptLooks, type Look, type LookFigures } from "../../answers/morning/last-look.ts";
import type { OrderToday } from "../../answers/morning/order-today.ts";
import { session } from "../../session.svelte.ts";
import type { Work } from "../../ui/job.svelte.ts";
import { sentence } from "../../ui/trouble.ts";
import { LATER, type LaterName, type MorningAsk, type Told } from "./later-parts.ts";
import { morningFacts, orderedNames, orderPart, waitingPart } from "./order-items.ts";
import { keptSheetText, ofRecords, type Fact, type KeptSheet } from "./kept-sheet.ts";
import type { Part } from "./sheet-part.ts";

const KEPT: readonly (keyof LookFigures)[] = ["order", "watch", "backlog_hours", "to_answer"];
const isWhole = (figures: Partial<LookFigures>): figures is LookFigures => KEPT.every((name) => figures[name] !== undefined);

/** What a sheet begins with. */
export interface Beginning {
  /** What it is worked out from (`sheetKey`). */
  readonly key: string | null;
  readonly facts: readonly Fact[];
  readonly first: readonly Part[];
  readonly later: KeptSheet["later"];
  readonly figures: Partial<LookFigures>;
}

/** Begins with all that rests on the records, of a sheet that was worked out from the same. */
export const begunWith = (sheet: KeptSheet): Beginning => ofRecords(sheet);

/** Begins with the orders alone. */
export function begunAnew(key: string | null, order: OrderToday, currency: string, before: Look | null): Beginning {
  const waiting = waitingPart(order);
  return { key, facts: morningFacts(order), first: [orderPart(order, currency, before), ...(waiting ? [waiting] : [])], later: [], figures: { order: orderedNames(order.restock) } };
}

/** One morning's sheet while its parts come in; once all stand, what they said is kept for the next look. */
export class MorningDay {
  /** What was wrong with the kept looks, or with keeping this one; else null. */
  fault = $state<string | null>(null);
  /** Turns that parts have come to; below 0 until the first picture stands. */
  reached = $state(-1);
  /** Parts that stand, or of which it is said why not. */
  private ended: readonly LaterName[] = $state.raw([]);
  /** Parts that came in later. */
  private come: KeptSheet["later"] = $state.raw([]);
  private figures: Partial<LookFigures>;
  private readonly works: Readonly<Record<LaterName, Work<Part>>>;

  /**
   * @param kept the ledger's looks, and what was wrong with them
   * @param now the reader's day, and which records are looked at
   */
  constructor(readonly begun: Beginning, kept: ReturnType<typeof readKeptLooks>, private readonly now: Pick<Look, "day" | "records">, private readonly ask: Omit<MorningAsk, "kept"> & { readonly lead: string }) {
    [this.fault, this.figures, this.come] = [kept.fault, begun.figures, begun.later];
    this.works = Object.fromEntries(LATER.map(({ name, turn }) => [name, this.#working(name, turn, { ...ask, kept: session })])) as Record<LaterName, Work<Part>>;
    this.ended = begun.later.map(({ name }) => name);
    this.#keepLook();
  }

  /** The look that changes are told against; null at the first. */
  get before(): Look | null { return this.ask.before; }
  get whole(): boolean { return LATER.every(({ name }) => this.ended.includes(name)); }
  get changed(): boolean { return [...this.begun.first, ...this.come.map(({ part }) => part)].some(({ changed }) => changed !== ""); }

  /** Lets the slow parts begin, once the first picture is painted. */
  begin(): () => void {
    let later: ReturnType<typeof setTimeout> | undefined;
    const reached = this.begun.later.length > 0 ? LATER.length : 0;
    const frame = requestAnimationFrame(() => { later = setTimeout(() => { this.reached = Math.max(reached, this.reached); }); });
    return () => { cancelAnimationFrame(frame); clearTimeout(later); };
  }

  /** A part with which the sheet began, else null. */
  standing(name: LaterName): Part | null { return this.begun.later.find((one) => one.name === name)?.part ?? null; }

  /** The work of a part whose turn has come, else null. */
  workOf(name: LaterName): Work<Part> | null {
    const turn = LATER.find((one) => one.name === name)?.turn ?? LATER.length;
    return turn <= this.reached ? this.works[name] : null;
  }

  #working(name: LaterName, turn: number, ask: MorningAsk): Work<Part> {
    return async (signal, report) => {
      try {
        // Its code is not needed for the first picture.
        const { laterWork } = await import("./later-works.ts"), told = await laterWork(name, ask)(signal, report);
        signal.throwIfAborted();
        this.#take(name, told);
        return told.part;
      } finally {
        this.reached = Math.max(this.reached, turn + 1);
        this.ended = [...this.ended, name];
      }
    };
  }

  #take(name: LaterName, { part, figures }: Told): void {
    this.come = [...this.come.filter((one) => one.name !== name), { name, part }];
    this.figures = { ...this.figures, ...figures };
    this.#keepLook();
    if (this.come.length === LATER.length) void this.#keepSheet().catch((error: unknown) => { this.fault = sentence(error); });
  }

  /** For the next opening: it stands there while the records are read, and for good where all it was worked out from is still the same then. */
  async #keepSheet(): Promise<void> {
    const { figures, begun: { key, facts, first }, ask: { version, lead } } = this, now = await session.sheetKey();
    if (!isWhole(figures) || session.version !== version) return;
    const later = LATER.flatMap(({ name }) => this.come.filter((one) => one.name === name));
    session.keepSheet(keptSheetText({ day: this.now.day, key: now === key ? key : null, lead, facts, first, later, figures }));
  }

  /** After the looks as they are kept now: another window may have looked since this sheet was begun. */
  #keepLook(): void {
    const { figures } = this;
    if (isWhole(figures)) void keptLook({ ...this.now, figures }).catch((error: unknown) => { this.fault = sentence(error); });
  }
}

async function keptLook(look: Look): Promise<void> {
  await session.consult((_, ledger) => ledger.changeSetting(MORNING_LOOKS_SETTING, (kept) => keptLooksText(looksAfter(readKeptLooks(kept).looks, look))));
}

/** The look that changes are told against on this day over these records, and the looks as they were kept. */
export function looksNow(text: string | null, now: Pick<Look, "day" | "records">): { readonly kept: ReturnType<typeof readKeptLooks>; readonly before: Look | null } {
  const kept = readKeptLooks(text);
  return { kept, before: lookToCompare(kept.looks, now) };
}
