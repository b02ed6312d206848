import type { Engine, Report } from "../../db/engine.ts";
import type { NamedFile } from "../formats/sheet.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { Answers } from "../understanding/answers.ts";
import type { ExamineOptions, FileUnderstanding, KnownModel, Preview } from "../understanding/understanding.ts";
import models from "./known-models.sql?raw";
import type { Look } from "./look.ts";

/** A shop's look at files: with its own list of reels, its spelling book, and what it answered before. */
export interface ShopLook {
  /**
   * Looks at a file with these answers, or without any with those remembered for its shape.
   *
   * @returns null when there is nothing to ask, see {@link Look}
   * @throws the signal's reason when cancelled
   */
  examine(file: NamedFile, answers: Answers | null, signal: AbortSignal, report: Report): Promise<FileUnderstanding | null>;
  /** @throws the signal's reason when cancelled */
  preview(file: NamedFile, answers: Answers, signal: AbortSignal, report: Report): Promise<Preview>;
}

export interface LookingShop {
  readonly engine: Engine;
  readonly ledger: Ledger;
  /** `YYYY-MM-DD` */
  readonly today: string;
  /** The reels in the engine are the invented shop's, which say nothing of the owner's. */
  readonly demo: boolean;
}

export function shopLook(look: Look, { engine, ledger, today, demo }: LookingShop): ShopLook {
  const options = async (signal: AbortSignal, report: Report): Promise<{ all: ExamineOptions; kept: (shape_key: string) => Answers | null }> => {
    const { whatIsKnown } = await import("../understanding/what-is-known.ts");
    const { remembered, book } = await whatIsKnown(ledger), kept = (key: string) => remembered.find(({ shape }) => shape === key)?.answers ?? null;
    return { all: { remembered: null, today, book, models: demo ? [] : await engine.rows<KnownModel>(models), signal, report }, kept };
  };
  return {
    async examine(file, answers, signal, report) {
      const { all, kept } = await options(signal, report), seen = await look.examine(file, { ...all, remembered: answers });
      const last = seen && answers === null ? kept(seen.shape_key) : null;
      return last ? look.examine(file, { ...all, remembered: last }) : seen;
    },
    async preview(file, answers, signal, report) {
      return look.preview(file, answers, (await options(signal, report)).all);
    },
  };
}
