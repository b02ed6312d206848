import type { NamedFile } from "../../records/formats/sheet.ts";
import type { ShopLook } from "../../records/looking/shop-look.ts";
import type { Answers, SheetAnswers } from "../../records/understanding/answers.ts";
import { answered, withColumn } from "../../records/understanding/questions.ts";
import type { FileUnderstanding, Preview, Question } from "../../records/understanding/understanding.ts";
import { Job } from "../../ui/job.svelte.ts";

/** One file the owner is asked about: what is understood of it, what is answered, and what would come in. */
export class AskedFile {
  readonly file: NamedFile;
  seen: FileUnderstanding = $state.raw() as FileUnderstanding;
  answers: Answers = $state.raw() as Answers;
  questions = $state.raw<readonly Question[]>([]);
  /** What is chosen of each question, by its id. */
  chosen = $state.raw<Readonly<Record<string, string>>>({});
  /** The newest preview; it stays while the next is on its way. */
  preview = $state.raw<Preview | null>(null);
  /** A reading that was not sure has been answered: the list stays on the screen, so that the answer can be taken back. */
  answering = $state(false);
  readonly job = new Job<Preview>();

  constructor(file: NamedFile, seen: FileUnderstanding) {
    this.file = file;
    this.take(seen);
  }

  private take(seen: FileUnderstanding): void {
    const ids = seen.questions.map(({ id }) => id), left = seen.sheets.filter(({ kind }) => kind === "left out").map(({ sheet }) => sheet);
    // A question that was answered is no longer open, and stays on the screen so that its answer can be changed.
    const before = this.questions.filter(({ id, sheet, about }) => !ids.includes(id) && (about === "sheet" || !left.includes(sheet)));
    const best = Object.fromEntries(seen.questions.flatMap(({ id, best: value }) => (value === null ? [] : [[id, value]])));
    [this.seen, this.answers, this.questions, this.chosen] = [seen, seen.proposed, [...before, ...seen.questions], { ...best, ...this.chosen }];
  }

  /** Questions without any answer yet. */
  get open(): readonly Question[] { return this.questions.filter(({ id }) => this.chosen[id] === undefined); }

  /** Reads the file with the answers as they are now. */
  async refresh(look: ShopLook): Promise<void> {
    const { answers } = this, preview = await this.job.run((signal, report) => look.preview(this.file, answers, signal, report));
    if (preview) this.preview = preview;
  }

  answeredNote(look: ShopLook): void {
    this.answering = true;
    void this.refresh(look);
  }

  async answer(question: Question, value: string, look: ShopLook): Promise<void> {
    this.chosen = { ...this.chosen, [question.id]: value };
    this.answers = answered(this.answers, question, value);
    await (question.about === "sheet" || question.about === "column" ? this.again(look) : this.refresh(look));
  }

  /** Takes other answers for one sheet; what its columns are may open and close questions. */
  async change(sheet: string | null, change: Partial<SheetAnswers>, look: ShopLook): Promise<void> {
    this.answers = { ...this.answers, sheets: this.answers.sheets.map((one) => (one.sheet === sheet ? { ...one, ...change } : one)) };
    await this.again(look);
  }

  /** Takes one column for something else. */
  async column(sheet: string | null, label: string, means: string | null, look: ShopLook): Promise<void> {
    this.answers = withColumn(this.answers, sheet, label, means);
    await this.again(look);
  }

  /** Forgets the answers of last time, and asks. */
  async afresh(look: ShopLook): Promise<void> {
    [this.answers, this.questions, this.chosen] = [{ version: 1, sheets: [] }, [], {}];
    await this.again(look);
  }

  private async again(look: ShopLook): Promise<void> {
    const { answers } = this;
    const preview = await this.job.run(async (signal, report) => {
      const seen = await look.examine(this.file, answers, signal, report);
      if (seen && !signal.aborted) this.take(seen);
      return look.preview(this.file, this.answers, signal, report);
    });
    if (preview) this.preview = preview;
  }
}
