import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { recordsFiles } from "../records-folder.ts";
import type { NamedFile } from "../../records/reading/read-file.ts";

/** Records of one shop: its name and where its files lie. */
export interface ShopFolder {
  readonly name: string;
  readonly path: string;
}

/** The pooled numbers of strata hold so many. */
const MOST = 4000;

/** `shop=Harrow%20Quay` as partitions are written, or a plain folder's own name. */
function shopName(folder: string): string {
  const written = /^shop=(.+)$/.exec(folder)?.[1];
  if (written === undefined) return folder;
  try {
    return decodeURIComponent(written);
  } catch (error) {
    if (!(error instanceof URIError)) throw error;
    return written;
  }
}

/**
 * The shops in a folder, by name: a folder for each, called by its name or `shop=NAME` as partitions are.
 *
 * @returns a sentence where the names do not tell the shops apart
 */
export async function shopFolders(folder: string): Promise<readonly ShopFolder[] | string> {
  const entries = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory() && !/^[._]/.test(entry.name));
  const shops = entries.map((entry) => ({ name: shopName(entry.name), path: join(folder, entry.name) })).sort((a, b) => (a.name < b.name ? -1 : 1));
  if (shops.length === 0) return `Nothing to read in ${folder}: it needs a folder for each shop.`;
  if (shops.length > MOST) return `${shops.length} shops in ${folder} are too many at once: at most ${MOST}.`;
  const twice = shops.find(({ name }, at) => shops[at + 1]?.name.toLowerCase() === name.toLowerCase());
  if (twice) return `Two folders of ${folder} mean the shop ${twice.name}. Give each shop one folder.`;
  const odd = shops.find(({ name }) => /[/\\\u0000-\u001f]/.test(name));
  return odd ? `A shop cannot be called ${JSON.stringify(odd.name)}: it is to be the name of a folder.` : shops;
}

/** Files of one shop to read. */
export const shopFiles = (shop: ShopFolder): Promise<NamedFile[]> => recordsFiles(shop.path);
