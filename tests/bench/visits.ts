import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { firstPicture, openApp } from "../browser/harness.ts";

/** Milliseconds to the first picture. */
export interface Visits {
  /** Nothing known to the browser; the demo is imported on the way. */
  first: number;
  /** In a browser started anew on the same profile: records and engine come from its own storage. */
  second: number;
}

async function visit(profileDir: string): Promise<number> {
  const app = await openApp({ profileDir });
  const took = await firstPicture(app);
  await app.close();
  return took;
}

/** Two visits of one invented owner, each in its own browser process. */
export async function visits(): Promise<Visits> {
  const profileDir = mkdtempSync(join(tmpdir(), "saltbench-visits-"));
  try {
    return { first: await visit(profileDir), second: await visit(profileDir) };
  } finally {
    rmSync(profileDir, { recursive: true, force: true });
  }
}
