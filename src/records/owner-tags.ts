import type { Ledger } from "./ledger/ledger.ts";

/** The setting that holds the salt; it goes into the backup with all others, so that a tag stays what it is. */
export const OWNER_SALT = "owner salt";

/** Letters and digits that are not mistaken for each other. */
const LETTERS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";
const TAG_LETTERS = 6;

const hex = (bytes: Uint8Array) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** The shop's own salt, made at its first use: of two windows that make one at once the first counts in both. */
export async function saltOf(ledger: Ledger): Promise<string> {
  const made = hex(crypto.getRandomValues(new Uint8Array(16)));
  return (await ledger.changeSetting(OWNER_SALT, (known) => known ?? made)) ?? made;
}

/** One name however it is written: case, marks and spaces do not make another owner. */
const plain = (name: string) => name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ").trim();

/**
 * The tag that stands for an owner in the place of a name, such as `owner-7F3K2M`.
 *
 * HMAC-SHA-256 (RFC 2104) of the name under the salt, cut to six of 30 letters: among a thousand owners the chance of one
 * equal pair is about 1 in 1,500. Without the salt nothing leads from the tag to the name.
 *
 * @returns null for a name without a letter or digit
 */
export async function ownerTag(name: string, salt: string): Promise<string | null> {
  const text = plain(name);
  if (text === "") return null;
  const encoder = new TextEncoder(), key = await crypto.subtle.importKey("raw", encoder.encode(salt), { name: "HMAC", hash: "SHA-256" }, false, ["sign"]);
  const digest = new Uint8Array(await crypto.subtle.sign("HMAC", key, encoder.encode(text)));
  return `owner-${Array.from(digest.subarray(0, TAG_LETTERS), (byte) => LETTERS[byte % LETTERS.length]).join("")}`;
}

/** Tags for a shop's owners, by their names. */
export async function ownerTags(ledger: Ledger, names: Iterable<string>): Promise<ReadonlyMap<string, string | null>> {
  const salt = await saltOf(ledger), found = new Map<string, string | null>();
  for (const name of new Set(names)) found.set(name, await ownerTag(name, salt));
  return found;
}
