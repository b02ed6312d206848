import type { Engine } from "../../db/engine.ts";
import { Unreadable } from "../formats/unreadable.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { saltOf } from "../owner-tags.ts";
import { spellingBook } from "../notes/own-spellings.ts";
import type { SpellingBook } from "../notes/own-spellings.ts";
import { SPELLING_SETTING, spellingsFrom } from "../notes/spellings-text.ts";
import type { Answers } from "./answers.ts";
import { answersFrom } from "./answers-text.ts";
import knownModels from "./known-models.sql?raw";
import { shapeOfSetting } from "./shape-key.ts";
import type { KnownModel } from "./understanding.ts";

/** What the shop has told before that helps to read its files. */
export interface WhatIsKnown {
  readonly remembered: readonly { readonly shape: string; readonly answers: Answers }[];
  readonly book: SpellingBook | null;
}

/** The salt for tags of owners, made when answers first ask for such tags; null while none do. */
export async function ownerSalt(ledger: Ledger, answers: readonly (Answers | null)[]): Promise<string | null> {
  const asked = answers.some((one) => one?.sheets.some(({ columns }) => columns.some(({ means }) => means === "owner")));
  return asked ? saltOf(ledger) : null;
}

/** Answers that a later version kept are passed over: the file is then understood anew. */
function answersKept(value: string): Answers | null {
  try {
    return answersFrom(value);
  } catch (error) {
    if (error instanceof Unreadable) return null;
    throw error;
  }
}

export async function whatIsKnown(ledger: Pick<Ledger, "settings">): Promise<WhatIsKnown> {
  const settings = await ledger.settings(), { entries, readings } = spellingsFrom(settings[SPELLING_SETTING] ?? null);
  const remembered = Object.entries(settings).flatMap(([name, value]) => {
    const shape = shapeOfSetting(name), answers = shape === null ? null : answersKept(value);
    return shape === null || answers === null ? [] : [{ shape, answers }];
  });
  return { remembered, book: entries.length + readings.length === 0 ? null : spellingBook(entries, readings) };
}

/** The shop's own list of reels, and what waits to be taken in; the waiting room must be open. */
export function modelsKnown(engine: Engine): Promise<KnownModel[]> {
  return engine.rows<KnownModel>(knownModels);
}
