import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { firstPicture, openApp } from "../browser/harness.ts";

/** Milliseconds to the first picture. */
export interface Visits {
  /** Nothing known to the browser; the demo is imported on the way. */
  first: number;
  /** In a browser started anew on the same profile: records and program come from its own storage. */
  second: number;
}

async function visit(profileDir: string): Promise<number> {
  const app = await openApp({ profileDir, offline: true });
  const took = await firstPicture(app);
  // What the first visit keeps after its picture answers for the second.
  await app.page.getByText("Opens without a network").waitFor();
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
