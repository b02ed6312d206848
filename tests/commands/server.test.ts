import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { request } from "node:http";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DOCUMENT_POLICY, SERVICE_WORKER_POLICY, WORKER_POLICY } from "../../src/commands/headers.mjs";
import { pack } from "../../src/commands/pack.mjs";
import { serve } from "../../src/commands/server.mjs";

interface Answer { status: number; headers: Record<string, string | string[] | undefined>; body: Buffer }

const LONG = "the same line of script; ".repeat(400);
const home = mkdtempSync(join(tmpdir(), "saltbench-server-"));
const folder = join(home, "app");
let server: Awaited<ReturnType<typeof serve>>;

function ask(path: string, { method = "GET", headers = {} }: { method?: string; headers?: Record<string, string> } = {}): Promise<Answer> {
  return new Promise((done, fail) => {
    const sent = request({ port: server.port, host: "127.0.0.1", path, method, headers, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => done({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }));
    });
    sent.on("error", fail).end();
  });
}

/** Sends the target as it stands: `http.request` would tidy it. */
function askRaw(target: string): Promise<string> {
  return new Promise((done, fail) => {
    const socket = connect(server.port, "127.0.0.1", () => socket.end(`GET ${target} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`));
    let text = "";
    socket.on("data", (part) => (text += part.toString("utf8"))).on("end", () => done(text)).on("error", fail);
  });
}

beforeAll(async () => {
  mkdirSync(join(folder, "assets"), { recursive: true });
  mkdirSync(join(folder, "workers"));
  writeFileSync(join(home, "secret.txt"), "the owner's accounts");
  writeFileSync(join(folder, "index.html"), "<!doctype html><title>Saltbench</title>");
  writeFileSync(join(folder, "assets/main-AbCd_-12.js"), LONG);
  writeFileSync(join(folder, "assets/plain.js"), "1");
  writeFileSync(join(folder, "service-worker.js"), "1");
  writeFileSync(join(folder, "saltbench.webmanifest"), "{}");
  writeFileSync(join(folder, "assets/engine-Bq3kfP0_.wasm"), Buffer.from([0, 97, 115, 109]));
  writeFileSync(join(folder, "workers/engine.worker-AbCdEf12.js"), LONG);
  writeFileSync(join(folder, "assets/tickets-AbCdEf12.csv.gz"), "packed by its maker");
  writeFileSync(join(folder, ".built.json"), "{}");
  symlinkSync(join(home, "secret.txt"), join(folder, "linked.txt"));
  symlinkSync(home, join(folder, "linked"));
  await pack(folder, join(home, "cache"));
  server = await serve({ folder });
});

afterAll(async () => {
  await server.close();
  rmSync(home, { recursive: true });
});

describe("the server", () => {
  test("sends the page with its policy and every other security header", async () => {
    const { status, headers, body } = await ask("/");
    expect(status).toBe(200);
    expect(body.toString()).toContain("<title>Saltbench</title>");
    expect(headers).toMatchObject({
      "content-type": "text/html; charset=utf-8",
      "content-security-policy": DOCUMENT_POLICY,
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "cross-origin-opener-policy": "same-origin",
      "cross-origin-resource-policy": "same-origin",
      "cache-control": "no-cache",
    });
    expect(headers["permissions-policy"]).toMatch(/camera=\(\), .*geolocation=\(\), .*usb=\(\)/);
  });

  test("lets the page run no inline script, no eval and no other origin", () => {
    expect(DOCUMENT_POLICY).not.toMatch(/unsafe|\*|https?:/);
    expect(DOCUMENT_POLICY).toMatch(/^default-src 'none'; script-src 'self';/);
  });

  test("gives worker scripts their own policy, and only them WebAssembly", async () => {
    const worker = await ask("/workers/engine.worker-AbCdEf12.js");
    expect(worker.headers["content-security-policy"]).toBe(WORKER_POLICY);
    expect(WORKER_POLICY).toContain("'wasm-unsafe-eval'");
    expect((await ask("/assets/main-AbCd_-12.js")).headers["content-security-policy"]).toBe(DOCUMENT_POLICY);
  });

  test("lets the service worker fetch from here and do nothing else, asks for it anew at each visit, and sends the manifest as one", async () => {
    const script = await ask("/service-worker.js"), manifest = await ask("/saltbench.webmanifest");
    expect(script.headers).toMatchObject({ "content-security-policy": SERVICE_WORKER_POLICY, "cache-control": "no-cache", "content-type": "text/javascript; charset=utf-8" });
    expect(SERVICE_WORKER_POLICY).toBe("default-src 'none'; connect-src 'self'");
    expect(manifest.headers["content-type"]).toBe("application/manifest+json");
    expect(DOCUMENT_POLICY).toContain("manifest-src 'self'; ");
  });

  test("keeps hashed names for ever and asks again for all others", async () => {
    expect((await ask("/assets/main-AbCd_-12.js")).headers["cache-control"]).toBe("public, max-age=31536000, immutable");
    expect((await ask("/assets/plain.js")).headers["cache-control"]).toBe("no-cache");
  });

  test.each([["br", brotliDecompressSync], ["gzip", gunzipSync]] as const)("sends %s to a browser that takes it, and the body survives", async (name, unpack) => {
    const { headers, body } = await ask("/assets/main-AbCd_-12.js", { headers: { "accept-encoding": name } });
    expect(headers).toMatchObject({ "content-encoding": name, vary: "Accept-Encoding", "content-length": String(body.length), "content-type": "text/javascript; charset=utf-8" });
    expect(body.length).toBeLessThan(LONG.length / 10);
    expect(unpack(body).toString()).toBe(LONG);
  });

  test("sends plain bytes to who takes no packing or refuses it", async () => {
    for (const accepted of [{}, { "accept-encoding": "br;q=0, gzip; q=0.0" }, { "accept-encoding": "zstd" }]) {
      const { headers, body } = await ask("/assets/main-AbCd_-12.js", { headers: accepted });
      expect(headers["content-encoding"]).toBeUndefined();
      expect(body.toString()).toBe(LONG);
    }
  });

  test("does not show a packed variant as a file, but does show a file that is packed by itself", async () => {
    expect((await ask("/assets/main-AbCd_-12.js.br")).status).toBe(404);
    const own = await ask("/assets/tickets-AbCdEf12.csv.gz", { headers: { "accept-encoding": "gzip" } });
    expect(own).toMatchObject({ status: 200, headers: { "content-type": "application/gzip" } });
    expect(own.headers["content-encoding"]).toBeUndefined();
  });

  test("answers 304 without a body to the tag it gave", async () => {
    const { headers } = await ask("/");
    const again = await ask("/", { headers: { "if-none-match": String(headers.etag) } });
    expect([again.status, again.body.length]).toEqual([304, 0]);
    expect((await ask("/", { headers: { "if-none-match": '"other"' } })).status).toBe(200);
  });

  test("answers HEAD with the headers of GET and no body", async () => {
    const { status, headers, body } = await ask("/assets/engine-Bq3kfP0_.wasm", { method: "HEAD" });
    expect([status, headers["content-type"], headers["content-length"], body.length]).toEqual([200, "application/wasm", "4", 0]);
  });

  test.each(["POST", "PUT", "DELETE", "OPTIONS", "PATCH"])("refuses %s", async (method) => {
    expect(await ask("/", { method })).toMatchObject({ status: 405, headers: { allow: "GET, HEAD" } });
  });

  test.each([
    "/../secret.txt", "/assets/../../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/%2e%2e%2fsecret.txt",
    "/..%5csecret.txt", "/%252e%252e/secret.txt", "//../secret.txt", "/assets/%00/../../secret.txt", "/linked.txt",
    "/linked/secret.txt", "/assets", "/assets/", "/nothing.js", "/.built.json",
  ])("finds nothing at %s", async (target) => {
    const text = await askRaw(target);
    expect(text).toMatch(/^HTTP\/1\.1 404 /);
    expect(text).not.toContain("accounts");
    expect(text).toContain("nosniff");
  });

  test("answers 400 to an address that is no text", async () => {
    expect(await askRaw("/%ff%zz")).toMatch(/^HTTP\/1\.1 400 /);
  });

  test("goes on serving the build it began with when the folder changes", async () => {
    writeFileSync(join(folder, "assets/plain.js"), "2");
    expect((await ask("/assets/plain.js")).body.toString()).toBe("1");
  });

  test("refuses a folder without a page, and says which", async () => {
    await expect(serve({ folder: join(folder, "assets") })).rejects.toThrow(/^serve: folder must hold an index\.html, got .*assets$/);
  });

  test("tells of a port that is taken", async () => {
    await expect(serve({ folder, port: server.port })).rejects.toMatchObject({ code: "EADDRINUSE" });
  });
});
