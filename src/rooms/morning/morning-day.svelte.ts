import { keptLooksText, looksAfter, lookToCompare, MORNING_LOOKS_SETTING, readKeptLooks, type Look, type LookFigures } from "../../answers/morning/last-look.ts";
import type { OrderToday } from "../../answers/morning/order-today.ts";
import { session } from "../../session.svelte.ts";
import type { Work } from "../../ui/job.svelte.ts";
import { sentence } from "../../ui/trouble.ts";
import { LATER, type LaterName, type MorningAsk, type Told } from "./later-parts.ts";
import { orderedNames, orderPart, waitingPart } from "./order-items.ts";
import { keptSheetText } from "./kept-sheet.ts";
import type { Part } from "./sheet-part.ts";

const KEPT: readonly (keyof LookFigures)[] = ["order", "watch", "backlog_hours", "to_answer"];
const isWhole = (figures: Partial<LookFigures>): figures is LookFigures => KEPT.every((name) => figures[name] !== undefined);

/** One morning's sheet while its parts come in; once all stand, what they said is kept for the next look. */
export class MorningDay {
  /** The look that changes are told against; null at the first. */
  readonly before: Look | null;
  /** Parts that stand at once. */
  readonly first: readonly Part[];
  /** What was wrong with the kept looks, or with keeping this one; else null. */
  fault = $state<string | null>(null);
  /** Turns that parts have come to; below 0 until the first picture stands. */
  reached = $state(-1);
  /** Parts that came in later. */
  private come = $state.raw<readonly { readonly name: LaterName; readonly part: Part }[]>([]);
  private figures: Partial<LookFigures>;
  private readonly works: Readonly<Record<LaterName, Work<Part>>>;

  /**
   * @param kept the ledger's setting as it was read
   * @param now the reader's day, and which records are looked at
   */
  constructor(order: OrderToday, kept: string | null, private readonly now: Pick<Look, "day" | "records">, private readonly ask: Omit<MorningAsk, "before" | "kept"> & { readonly currency: string; readonly lead: string }) {
    const { looks, fault } = readKeptLooks(kept), before = lookToCompare(looks, now), waiting = waitingPart(order);
    [this.fault, this.before, this.figures] = [fault, before, { order: orderedNames(order.restock) }];
    this.first = [orderPart(order, ask.currency, before), ...(waiting ? [waiting] : [])];
    this.works = Object.fromEntries(LATER.map(({ name, turn }) => [name, this.#working(name, turn, { ...ask, before, kept: session })])) as Record<LaterName, Work<Part>>;
  }

  get whole(): boolean { return this.reached >= LATER.length; }
  get changed(): boolean { return [...this.first, ...this.come.map(({ part }) => part)].some(({ changed }) => changed !== ""); }

  /** Lets the slow parts begin, once the first picture is painted. */
  begin(): () => void {
    let later: ReturnType<typeof setTimeout> | undefined;
    const frame = requestAnimationFrame(() => { later = setTimeout(() => { this.reached = Math.max(0, this.reached); }); });
    return () => { cancelAnimationFrame(frame); clearTimeout(later); };
  }

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
      }
    };
  }

  #take(name: LaterName, { part, figures }: Told): void {
    this.come = [...this.come.filter((one) => one.name !== name), { name, part }];
    if (this.come.length === LATER.length) this.#keepSheet();
    this.figures = { ...this.figures, ...figures };
    if (isWhole(this.figures)) void this.#keep(this.figures).catch((error: unknown) => { this.fault = sentence(error); });
  }

  /** For the next opening, when it stands there while the records are read. */
  #keepSheet(): void {
    const later = LATER.flatMap(({ name }) => this.come.filter((one) => one.name === name).map(({ part }) => part));
    session.keepSheet(keptSheetText({ day: this.now.day, lead: this.ask.lead, parts: [...this.first, ...later] }));
  }

  /** After the looks as they are kept now: another window may have looked since this sheet was begun. */
  async #keep(figures: LookFigures): Promise<void> {
    await session.consult((_, ledger) => ledger.changeSetting(MORNING_LOOKS_SETTING, (kept) => keptLooksText(looksAfter(readKeptLooks(kept).looks, { ...this.now, figures }))));
  }
}
