import { describe, expect, test } from "vitest";
import { chosenFiles, droppedFiles } from "../../../src/rooms/records/files-of.ts";

const file = (name: string, webkitRelativePath = "") => ({ name, webkitRelativePath }) as File;

/** A file entry as browsers give it. */
const entry = (path: string) => ({
  name: path.split("/").at(-1), isFile: true, fullPath: path, file: (done: (file: File) => void) => done(file(path)),
});
/** A folder entry whose reader gives `portion` entries at a time, as browsers give at most a hundred. */
const folder = (name: string, inside: unknown[], portion = 2) => ({
  name, isFile: false,
  createReader: () => {
    const left = [...inside];
    return { readEntries: (done: (entries: unknown[]) => void) => done(left.splice(0, portion)) };
  },
});
const dropped = (...entries: unknown[]) =>
  ({ items: entries.map((one) => ({ webkitGetAsEntry: () => one, getAsFile: () => null })) }) as unknown as DataTransfer;
const names = (files: readonly { name: string }[]) => files.map((one) => one.name);

describe("chosenFiles", () => {
  test("gives files by name, with the folder they were chosen in", () => {
    expect(names(chosenFiles([file("b.csv"), file("a.csv"), file("t.csv", "2024/t.csv")]))).toEqual(["2024/t.csv", "a.csv", "b.csv"]);
  });

  test("leaves out what systems put beside one's own files", () => {
    const files = [file(".DS_Store"), file("x", ".git/x"), file("Thumbs.db", "pics/Thumbs.db"), file("desktop.ini"), file("my.csv")];
    expect(names(chosenFiles(files))).toEqual(["my.csv"]);
  });
});

describe("droppedFiles", () => {
  test("reads folders through to their end, portion by portion", async () => {
    const deep = folder("year", [entry("/shop/year/4.csv")]);
    const shop = folder("shop", [entry("/shop/3.csv"), entry("/shop/1.csv"), entry("/shop/2.csv"), deep]);
    expect(names(await droppedFiles(dropped(shop, entry("/0.csv"))))).toEqual(["0.csv", "shop/1.csv", "shop/2.csv", "shop/3.csv", "shop/year/4.csv"]);
  });

  test("leaves out hidden files and folders, and what is no file at all", async () => {
    expect(names(await droppedFiles(dropped(folder(".git", [entry("/.git/a")]), entry("/.hidden"), null, entry("/a.csv"))))).toEqual(["a.csv"]);
  });

  test("takes a file without a place on the disk, as programs drop it", async () => {
    const items = [{ webkitGetAsEntry: () => null, getAsFile: () => file("a.csv") }];
    expect(names(await droppedFiles({ items } as unknown as DataTransfer))).toEqual(["a.csv"]);
  });

  test("a file that cannot be opened is told, not skipped", async () => {
    const gone = { name: "a.csv", isFile: true, file: (_: unknown, fail: (error: Error) => void) => fail(new Error("gone")) };
    await expect(droppedFiles(dropped(gone))).rejects.toThrow("gone");
  });
});
