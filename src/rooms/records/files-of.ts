import type { NamedFile } from "../../records/reading/read-file.ts";

/** Files that systems put beside one's own, such as `.DS_Store`. */
const hidden = (name: string): boolean => name.split("/").some((part) => part.startsWith(".") || part === "Thumbs.db" || part === "desktop.ini");

const byName = (a: NamedFile, b: NamedFile): number => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0);

/** Files of an input, a whole folder or single ones, by name. */
export function chosenFiles(list: Iterable<File>): NamedFile[] {
  return [...list].map((file) => ({ name: file.webkitRelativePath || file.name, blob: file }))
    .filter((file) => !hidden(file.name)).sort(byName);
}

function fileOf(entry: FileSystemFileEntry): Promise<NamedFile> {
  return new Promise((done, fail) => entry.file((file) => done({ name: entry.fullPath.replace(/^\//, ""), blob: file }), fail));
}

/** A reader gives a folder in portions and an empty one at the end. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader(), all: FileSystemEntry[] = [];
  for (;;) {
    const portion = await new Promise<FileSystemEntry[]>((done, fail) => reader.readEntries(done, fail));
    if (portion.length === 0) return all;
    all.push(...portion);
  }
}

async function below(entry: FileSystemEntry): Promise<NamedFile[]> {
  if (hidden(entry.name)) return [];
  if (entry.isFile) return [await fileOf(entry as FileSystemFileEntry)];
  const inside = await Promise.all((await entriesOf(entry as FileSystemDirectoryEntry)).map(below));
  return inside.flat();
}

/**
 * Files dropped on the page, folders read through to their end, by name.
 *
 * Call it inside the drop event: the browser forgets the items when the event is over.
 */
export async function droppedFiles(dropped: DataTransfer): Promise<NamedFile[]> {
  const found = [...dropped.items].map((item) => {
    const entry = item.webkitGetAsEntry(), file = item.getAsFile();
    if (entry) return below(entry);
    // What a program (not a person) drops has no place on the disk.
    return file ? chosenFiles([file]) : [];
  });
  return (await Promise.all(found)).flat().sort(byName);
}
