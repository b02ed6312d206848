/** One version of the app as the build lists it for use without a network. */
export interface Program {
  /** `0.1.0 (3fa9c1d2)`, as the page says it. */
  readonly version: string;
  /** SHA-256 in base64 of each file, by its path below the app's folder. */
  readonly files: Readonly<Record<string, string>>;
  /** Of all files together. */
  readonly bytes: number;
}

const PREFIX = "saltbench ";

/** The browser's cache that holds the files of a version, and the lock that a window of this version holds. */
export const nameOf = (version: string): string => PREFIX + version;

/** True of caches and locks named by `nameOf`. */
export const isOurs = (name: string): boolean => name.startsWith(PREFIX);

/**
 * The file a request asks for, as a path below the app's folder; null for what is no file of ours.
 *
 * @param scope address of the app's folder, with a slash at its end
 * @example
 * pathOf("http://127.0.0.1:4173/#/stock", "http://127.0.0.1:4173/") // => "index.html"
 */
export function pathOf(address: string, scope: string): string | null {
  const { origin, pathname } = new URL(address), folder = new URL(scope);
  if (origin !== folder.origin || !pathname.startsWith(folder.pathname)) return null;
  return pathname.slice(folder.pathname.length) || "index.html";
}
