import type { NamedFile } from "../formats/sheet.ts";
import { Unreadable } from "../formats/unreadable.ts";
import { incoming } from "../returned-rows.ts";
import type { Answers } from "../understanding/answers.ts";
import { examine } from "../understanding/examine.ts";
import { preview } from "../understanding/preview.ts";
import type { ExamineOptions, FileUnderstanding, Preview } from "../understanding/understanding.ts";

/** Looks at files before anything of them is kept. */
export interface Look {
  /**
   * @returns what is understood of the file; null when there is nothing to ask, because it cannot be read or is a list of rows
   * to fix that comes back
   */
  examine(file: NamedFile, options: ExamineOptions): Promise<FileUnderstanding | null>;
  /** What would come in with these answers. */
  preview(file: NamedFile, answers: Answers, options: ExamineOptions): Promise<Preview>;
}

/** True for a list of rows to fix that comes back. */
async function isReturned(file: NamedFile, signal: AbortSignal): Promise<boolean> {
  return (await incoming([file], async () => [], signal)).every(({ lines }) => lines !== null);
}

/** Looks at files on this thread. */
export const lookHere: Look = {
  async examine(file, options) {
    try {
      return (await isReturned(file, options.signal)) ? null : await examine(file, options);
    } catch (error) {
      if (error instanceof Unreadable) return null;
      throw error;
    }
  },
  preview: (file, answers, options) => preview(file, answers, options),
};
