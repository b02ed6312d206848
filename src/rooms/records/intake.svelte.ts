import type { Report } from "../../db/engine.ts";
import type { NamedFile } from "../../records/formats/sheet.ts";
import type { Imported } from "../../records/importing.ts";
import type { Batch } from "../../records/ledger/ledger.ts";
import type { Settlement } from "../../records/looking/remembered.ts";
import { sameImport } from "../../records/looking/same-import.ts";
import { askedTogether, unknownTogether } from "./unknown-together.ts";
import type { AskedReading } from "../../records/notes/asked-readings.ts";
import type { UnknownWords } from "../../records/notes/unknown-words.ts";
import type { FileUnderstanding } from "../../records/understanding/understanding.ts";
import type { Session } from "../../session.svelte.ts";
import type { Job } from "../../ui/job.svelte.ts";
import { AskedFile } from "./asked-file.svelte.ts";

const MAPPING = /(?:^|\/)mapping\.json$/;
const folder = (name: string) => name.slice(0, name.lastIndexOf("/") + 1);

/** Our own tables come in as they are: there is nothing to ask about them. */
const isPlain = (seen: FileUnderstanding | null): boolean => seen === null || (seen.questions.length === 0 && seen.sheets.every(({ kind }) => kind === "table"));

/** What was brought in last, so that it can be read again. */
interface Last { readonly files: readonly NamedFile[]; readonly answers: Settlement["answers"]; readonly words: readonly UnknownWords[]; readonly asked: readonly AskedReading[]; readonly staying_out: number }

/** Files on their way in: looked at, asked about one after the other, and written all together or not at all. */
export class Intake {
  /** All files, in the order they were given. */
  files = $state.raw<readonly NamedFile[]>([]);
  /** Those that something has to be asked about. */
  asked = $state.raw<readonly AskedFile[]>([]);
  /** Which of them is on the screen. */
  at = $state(0);
  /** An import of nothing but these files, byte for byte. */
  same = $state.raw<Batch | null>(null);
  /** That import is to be taken out, and the files read again. */
  again = $state(false);
  private last = $state.raw<Last | null>(null);

  get current(): AskedFile | null { return this.asked[this.at] ?? null; }

  /** Files that come in without a question. */
  get plain(): readonly NamedFile[] {
    return this.files.filter((file) => !MAPPING.test(file.name) && this.asked.every((one) => one.file !== file));
  }

  /** Words in what came in last that nothing was read from. */
  get words_left(): readonly UnknownWords[] { return this.last?.words ?? []; }

  /** Readings of what came in last that were not sure, and how many findings stay out for it. */
  get asked_left(): { readonly asked: readonly AskedReading[]; readonly staying_out: number } { return this.last ?? { asked: [], staying_out: 0 }; }

  /** Looks at the files one after the other. @throws the signal's reason when cancelled */
  async lookAt(files: readonly NamedFile[], { look, batches }: Pick<Session, "look" | "batches">, signal: AbortSignal, report: Report): Promise<void> {
    const mapped = files.filter(({ name }) => MAPPING.test(name)).map(({ name }) => folder(name)), asked: AskedFile[] = [];
    for (const file of files.filter(({ name }) => !MAPPING.test(name) && !mapped.includes(folder(name)))) {
      report({ step: `Looking at ${file.name}`, done: 0, total: null });
      const seen = await look.examine(file, null, signal, report);
      if (seen && !isPlain(seen)) asked.push(new AskedFile(file, seen));
    }
    this.same = asked.length > 0 ? await sameImport(files, batches) : null;
    signal.throwIfAborted();
    [this.files, this.asked, this.at, this.again, this.last] = [files, asked, 0, false, null];
  }

  /** Takes the file on the screen out of what comes in. */
  leaveOut(): void {
    const { current } = this;
    current?.job.cancel();
    this.files = this.files.filter((file) => file !== current?.file);
    this.asked = this.asked.filter((one) => one !== current);
    this.at = Math.min(this.at, Math.max(0, this.asked.length - 1));
  }

  clear(): void {
    for (const one of this.asked) one.job.cancel();
    [this.files, this.asked, this.at, this.last] = [[], [], 0, null];
  }

  /** Writes what is on its way, or the last files once more in the place of their import. */
  async bringIn(job: Job<Imported>, session: Session): Promise<void> {
    const { last, same, again } = this, files = last?.files ?? this.files, left = last ?? this.left();
    const answers = last?.answers ?? this.asked.map(({ file, answers: own, seen }) => ({ file: file.name, answers: own, shape_key: seen.shape_key }));
    // Taken out in another window meanwhile, there is nothing to take its place.
    const there = session.batches.some(({ id }) => id === same?.id);
    const batch = await job.run((signal, report) => session.bringIn(files, signal, report, { answers, instead_of: again && there ? same : null }));
    if (!batch) return;
    this.clear();
    await session.keepOpenWords({ batch: batch.id, words: left.words.map(({ words }) => words), readings: left.asked.map(({ wording }) => wording) });
    [this.last, this.again] = [{ files, answers, words: left.words, asked: left.asked, staying_out: left.staying_out }, false];
  }

  /** What the files leave open. */
  private left(): Pick<Last, "words" | "asked" | "staying_out"> {
    const seen = this.asked.flatMap(({ preview }) => preview ?? []);
    return {
      words: unknownTogether(seen.map(({ unknown_words }) => unknown_words)), asked: askedTogether(seen.map(({ asked_readings }) => asked_readings)),
      staying_out: seen.reduce((sum, { staying_out }) => sum + staying_out, 0),
    };
  }

  /** After a word was answered when the files were in already: offers to read them again. */
  answeredAfter(batch: Batch): void {
    [this.same, this.again] = [batch, true];
  }
}
