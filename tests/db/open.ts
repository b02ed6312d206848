import { afterAll } from "vitest";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";

let started: Promise<Engine> | null = null;

/**
 * The one engine of a test file with all tables empty, also when asked again; its start takes a second, the rest little.
 *
 * @example
 * const engine = await openEngine(); // in beforeAll or at the head of a test
 */
export async function openEngine(): Promise<Engine> {
  started ??= openNodeEngine();
  const engine = await started;
  await prepareSchema(engine);
  return engine;
}

afterAll(async () => {
  await (await started)?.close();
  started = null;
});
