import { mkdir, mkdtemp, readdir, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";

/**
 * Writes all files into `folder`, each whole or not at all: first beside it, then moved in by name.
 *
 * Files of other names that are in the folder stay. When anything fails before the moving, nothing is changed.
 *
 * @throws what the file system throws
 */
export async function writtenWhole(folder: string, files: ReadonlyMap<string, string>): Promise<void> {
  const target = resolve(folder);
  await mkdir(dirname(target), { recursive: true });
  const beside = await mkdtemp(join(dirname(target), `.${basename(target)}-`));
  try {
    for (const [name, text] of files) await writeFile(join(beside, name), text, "utf8");
    await mkdir(target, { recursive: true });
    for (const name of await readdir(beside)) await rename(join(beside, name), join(target, name));
  } finally {
    await rm(beside, { recursive: true, force: true });
  }
}
