import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { DOCUMENT_POLICY } from "./headers.mjs";
import { ROOT } from "./root.mjs";

const NOTE = join(ROOT, "dist/running.json");

/** @param {number} pid */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    if (error instanceof Error && "code" in error) return error.code === "EPERM";
    throw error;
  }
}

/** @param {string} url */
async function answersAsWe(url) {
  try {
    const answer = await fetch(url, { method: "HEAD", signal: AbortSignal.timeout(2000) });
    return answer.headers.get("content-security-policy") === DOCUMENT_POLICY;
  } catch (error) {
    if (error instanceof Error) return false;
    throw error;
  }
}

/**
 * Leaves word of where this folder's Saltbench runs, for a second `npm start`.
 *
 * @param {string} url
 * @param {string} [note]
 * @returns {() => void} takes the word back
 */
export function announce(url, note = NOTE) {
  mkdirSync(dirname(note), { recursive: true });
  writeFileSync(note, JSON.stringify({ url, pid: process.pid }));
  return () => rmSync(note, { force: true });
}

/**
 * Where this folder's Saltbench already runs, or null; the word of one that was killed does not count.
 *
 * @param {string} [note]
 * @returns {Promise<string | null>}
 */
export async function runningAt(note = NOTE) {
  if (!existsSync(note)) return null;
  const { url, pid } = JSON.parse(readFileSync(note, "utf8"));
  return isAlive(pid) && (await answersAsWe(url)) ? url : null;
}
