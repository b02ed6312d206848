import { intoFolder } from "./output-folder.ts";

/**
 * Writes all files into `folder`, each whole or not at all.
 *
 * @throws what the file system throws; then nothing is changed
 */
export async function writtenWhole(folder: string, files: ReadonlyMap<string, string>): Promise<void> {
  await intoFolder(folder, async ({ write }) => {
    for (const [name, text] of files) await write(name, text);
  });
}
