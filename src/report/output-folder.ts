import { appendFile, mkdir, mkdtemp, readdir, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";

/** Where files wait beside their folder until all are there. */
export interface OutputFolder {
  /** @param name may hold folders: `shops/Tolness/wear.csv` */
  readonly write: (name: string, content: string | Uint8Array) => Promise<void>;
  readonly append: (name: string, text: string) => Promise<void>;
}

async function movedIn(from: string, to: string): Promise<void> {
  await mkdir(to, { recursive: true });
  for (const entry of await readdir(from, { withFileTypes: true })) {
    if (entry.isDirectory()) await movedIn(join(from, entry.name), join(to, entry.name));
    else await rename(join(from, entry.name), join(to, entry.name));
  }
}

/**
 * Writes files into `folder`, all or none: they are written beside it, and moved in by name when `work` has ended well.
 *
 * Files of other names that are in the folder stay.
 *
 * @throws what `work` or the file system throws; then nothing is changed
 */
export async function intoFolder<T>(folder: string, work: (out: OutputFolder, beside: string) => Promise<T>): Promise<T> {
  const target = resolve(folder);
  await mkdir(dirname(target), { recursive: true });
  const beside = await mkdtemp(join(dirname(target), `.${basename(target)}-`)), files = join(beside, "files");
  const placed = async (name: string) => {
    const path = join(files, name);
    await mkdir(dirname(path), { recursive: true });
    return path;
  };
  try {
    await mkdir(files);
    const done = await work({
      write: async (name, content) => writeFile(await placed(name), content), append: async (name, text) => appendFile(await placed(name), text, "utf8"),
    }, beside);
    await movedIn(files, target);
    return done;
  } finally {
    await rm(beside, { recursive: true, force: true });
  }
}
