import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { announce, runningAt } from "../../src/commands/running.mjs";
import { serve } from "../../src/commands/server.mjs";
import { askedPort, serveSomewhere } from "../../src/commands/start-app.mjs";

const folder = mkdtempSync(join(tmpdir(), "saltbench-start-"));
const note = join(folder, "running.json");
let server: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  writeFileSync(join(folder, "index.html"), "<title>Saltbench</title>");
  server = await serve({ folder });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

describe("a second npm start", () => {
  test("hears of the first while that one runs, and no longer once it has ended", async () => {
    expect(await runningAt(note)).toBeNull();
    const takeBack = announce(server.url, note);
    expect(await runningAt(note)).toBe(server.url);
    takeBack();
    expect(await runningAt(note)).toBeNull();
  });

  test("does not believe the word of one that was killed", async () => {
    writeFileSync(note, JSON.stringify({ url: server.url, pid: 2 ** 22 + 1 }));
    expect(await runningAt(note)).toBeNull();
  });

  test("does not take another program on that port for Saltbench", async () => {
    const other = createServer((_request, response) => void response.end("hello"));
    await new Promise<void>((done) => other.listen(0, "127.0.0.1", done));
    const address = other.address();
    announce(`http://127.0.0.1:${typeof address === "object" ? address?.port : ""}/`, note);
    expect(await runningAt(note)).toBeNull();
    other.close();
  });
});

describe("the port", () => {
  test("asked for is a number from 0 to 65535, or none", () => {
    expect([undefined, "", "0", "5050"].map(askedPort)).toEqual([null, null, 0, 5050]);
    for (const wrong of ["http", "-1", "70000", "1.5"]) expect(() => askedPort(wrong)).toThrow(`PORT must be a number from 0 to 65535, got ${wrong}`);
  });

  test("asked for is never exchanged for another: a taken one is an error that says what to do", async () => {
    await expect(serveSomewhere(folder, server.port)).rejects.toThrow(`Port ${server.port} is taken by another program. Choose another, for instance: PORT=5050 npm start`);
  });

  test("not asked for is the usual one or a free one after it", async () => {
    const [first, second] = [await serveSomewhere(folder, null), await serveSomewhere(folder, null)];
    expect(second.port).toBeGreaterThan(first.port);
    expect(first.port).toBeGreaterThanOrEqual(4173);
    await first.close();
    await second.close();
  });
});
