/** What a window says to the service worker. */
export type Said =
  /** Answered with the version, over the port that comes with it. */
  | { readonly say: "which version" }
  /** The first picture stands: there is time to look after the files. */
  | { readonly say: "standing" }
  /** The owner wants the newer version. */
  | { readonly say: "take over" };

/** What the service worker says to all windows. */
export type Told =
  | { readonly tell: "not kept"; readonly why: "no room" | "not fetched" }
  /** Files had changed on the disk: fetched anew, or gone until the server can be reached. */
  | { readonly tell: "looked over"; readonly mended: readonly string[]; readonly lost: readonly string[] };
