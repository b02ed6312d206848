/** Whether the app opens without a network, and if not, why: it runs from its sources, the browser forbids it, has no room, or could not fetch all. */
export type Kept = "not asked yet" | "yes" | "sources" | "forbidden" | "no room" | "not fetched";

const WORDS: Readonly<Record<Kept, string | null>> = {
  "not asked yet": null,
  yes: "Opens without a network",
  sources: null,
  forbidden: "Needs a network: this browser keeps no programs here",
  "no room": "Needs a network: there is no room to keep the program",
  "not fetched": "Needs a network: the program could not be fetched whole; it is tried again at the next visit",
};

/** A short line on whether this app opens without a network, or null while there is nothing to say. */
export const keptWords = (kept: Kept): string | null => WORDS[kept];
