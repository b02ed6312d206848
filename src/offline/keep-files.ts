import { isHashed } from "../commands/headers.mjs";
import type { Program } from "./program.ts";

/** What keeping files needs of the service worker's surroundings; tests bring their own. */
export interface Shelf {
  /** Address of the app's folder, with a slash at its end. */
  readonly scope: string;
  /** Holds the files of this version. */
  readonly cache: Pick<Cache, "match" | "put" | "delete">;
  /** Bytes that may still be stored, null where the browser does not say. */
  readonly room: () => Promise<number | null>;
  /** The same file as another version kept it, if one did. */
  readonly elsewhere: (address: string) => Promise<Response | undefined>;
  readonly fetch: (address: string, how: RequestInit) => Promise<Response>;
}

/** There is no room for the program, or so little that records would soon have none. */
export class NoRoom extends Error {
  override readonly name = "NoRoom";
}

/** The server gives other bytes than the build listed: it has another version by now, or is no server of ours. */
export class OtherBytes extends Error {
  override readonly name = "OtherBytes";

  constructor(path: string) {
    super(`${path} is not the file this version was built with.`);
  }
}

async function sha256(body: ArrayBuffer): Promise<string> {
  return btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest("SHA-256", body))));
}

/** False for bytes that differ, and for those that cannot be read any more. */
async function isWhole(response: Response, hash: string): Promise<boolean> {
  try {
    return response.ok && (await sha256(await response.arrayBuffer())) === hash;
  } catch (error) {
    if (error instanceof DOMException || error instanceof TypeError) return false;
    throw error;
  }
}

/** From another version's files, from what the browser fetched already, or from the server itself. @throws {OtherBytes} and what `fetch` throws */
async function wholeFile(path: string, hash: string, { scope, elsewhere, fetch }: Shelf): Promise<Response> {
  const address = scope + path, ways = [
    async () => (isHashed(path) ? elsewhere(address) : undefined),
    () => fetch(address, { cache: isHashed(path) ? "default" : "no-cache" }),
    () => fetch(address, { cache: "reload" }),
  ];
  for (const way of ways) {
    const found = await way();
    if (found && (await isWhole(found.clone(), hash))) return found;
  }
  throw new OtherBytes(path);
}

const whole = async (path: string, hash: string, { scope, cache }: Shelf): Promise<boolean> => {
  const kept = await cache.match(scope + path, { ignoreVary: true });
  return kept !== undefined && isWhole(kept, hash);
};

/**
 * Keeps every file of a version, one after the other so that the page keeps the line; what an attempt before has kept stays.
 *
 * @throws {NoRoom} {OtherBytes} and what `fetch` throws
 */
export async function keepFiles({ files, bytes }: Program, shelf: Shelf): Promise<void> {
  const room = await shelf.room();
  if (room !== null && room < 2 * bytes) throw new NoRoom("Records would have no room beside the program.");
  for (const [path, hash] of Object.entries(files)) {
    if (!(await whole(path, hash, shelf))) await shelf.cache.put(shelf.scope + path, await wholeFile(path, hash, shelf));
  }
}

/**
 * Looks at every kept file and fetches anew what is missing or has changed. What cannot be had is taken away, so that
 * it is asked of the server when it is needed.
 *
 * @returns paths of files that were not whole, by whether they are now
 */
export async function lookOver({ files }: Program, shelf: Shelf): Promise<{ mended: string[]; lost: string[] }> {
  const mended: string[] = [], lost: string[] = [];
  for (const [path, hash] of Object.entries(files)) {
    if (await whole(path, hash, shelf)) continue;
    try {
      await shelf.cache.put(shelf.scope + path, await wholeFile(path, hash, shelf));
      mended.push(path);
    } catch (error) {
      if (!(error instanceof OtherBytes || error instanceof TypeError || error instanceof DOMException)) throw error;
      await shelf.cache.delete(shelf.scope + path, { ignoreVary: true });
      lost.push(path);
    }
  }
  return { mended, lost };
}
