import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { closeAll, csvFile, download, firstPicture, openApp, seriousViolations } from "./harness.ts";
import type { Seen } from "./harness.ts";

/** A page that does everything the app must not do, each when its button is pressed. */
const WRONGS: Record<string, string> = {
  log: `console.log("chatter")`,
  error: `setTimeout(() => { throw new Error("broken") })`,
  fetch: `fetch("http://example.org/tracker").catch(() => 0)`,
  beacon: `navigator.sendBeacon("http://example.org/beacon", "x")`,
  picture: `new Image().src = "http://example.org/pixel.png"`,
  socket: `new WebSocket("ws://example.org/socket")`,
  inline: `document.body.append(Object.assign(document.createElement("script"), { textContent: "window.ran = true" }))`,
  markup: `document.body.insertAdjacentHTML("beforeend", "<p>from text</p>")`,
  style: `document.body.setAttribute("style", "color: red")`,
  eval: `try { window.eval("window.ran = true") } catch { window.refused = true }`,
  worker: `new Worker("page.js")`,
  workerFetch: `window.trustedTypes.createPolicy("default", { createScriptURL: (address) => address }); new Worker("workers/bad.js")`,
};
const PAGE = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Wrong</title><link rel="icon" href="data:,"></head><body>
<h1>Wrong</h1>${Object.keys(WRONGS).map((name) => `<button id="${name}">${name}</button>`).join("")}
<label>File <input type="file" id="file"></label><output id="text"></output><a id="save" download="saved.csv" href="data.csv">save</a>
<img id="nameless" src="data:,"><script src="page.js"></script></body></html>`;
const SCRIPT = `${Object.entries(WRONGS).map(([name, act]) => `document.getElementById("${name}").onclick = () => { ${act} };`).join("\n")}
document.getElementById("file").onchange = async (event) => { document.getElementById("text").textContent = await event.target.files[0].text(); };
performance.mark("saltbench:first-picture");
const request = indexedDB.open("kept", 1);
request.onupgradeneeded = () => request.result.createObjectStore("rows", { autoIncrement: true });
window.kept = new Promise((done) => { request.onsuccess = () => done(request.result); });
window.keep = async (row) => { const db = await window.kept; const act = db.transaction("rows", "readwrite", { durability: "strict" });
  act.objectStore("rows").add(row); await new Promise((done) => { act.oncomplete = done; }); };
window.count = async () => { const ask = (await window.kept).transaction("rows").objectStore("rows").count();
  return new Promise((done) => { ask.onsuccess = () => done(ask.result); }); };`;

const home = mkdtempSync(join(tmpdir(), "saltbench-harness-"));
const folder = join(home, "app");

beforeAll(() => {
  mkdirSync(join(folder, "workers"), { recursive: true });
  writeFileSync(join(folder, "index.html"), PAGE);
  writeFileSync(join(folder, "page.js"), SCRIPT);
  writeFileSync(join(folder, "data.csv"), "a,b\n1,2\n");
  writeFileSync(join(folder, "workers/bad.js"), `fetch("http://example.org/from-worker").catch(() => 0)`);
});
afterAll(async () => {
  await closeAll();
  rmSync(home, { recursive: true, force: true });
});

/** What the watchers saw of one kind after one button of the wrong page. */
async function afterPressing(name: string, kind: keyof Seen) {
  const app = await openApp({ folder });
  app.expectClean();
  await app.page.click(`#${name}`);
  await expect.poll(() => app.seen[kind].length).toBeGreaterThan(0);
  const lines = [...app.seen[kind]];
  expect(() => app.expectClean()).toThrow(/not clean/);
  await app.close();
  app.seen.policy.length = 0;
  app.seen.reached.length = 0;
  return lines;
}

describe("the watchers see", () => {
  test("a word on the console", async () => {
    expect(await afterPressing("log", "console")).toEqual(["log: chatter"]);
  });

  test("an error that nobody caught", async () => {
    expect(await afterPressing("error", "errors")).toEqual(["broken"]);
  });

  test.each([
    ["fetch", "connect-src"], ["beacon", "connect-src"], ["picture", "img-src"], ["socket", "connect-src"], ["style", "style-src-attr"],
    ["inline", "require-trusted-types-for"], ["markup", "require-trusted-types-for"], ["eval", "require-trusted-types-for"],
    ["worker", "require-trusted-types-for"],
  ])("%s, stopped by the page's %s", async (name, rule) => {
    expect((await afterPressing(name, "policy")).join()).toContain(`${rule} blocked`);
  });

  test("a worker that asks another origin, stopped by the worker's own policy", async () => {
    expect((await afterPressing("workerFetch", "policy")).join()).toMatch(/connect-src blocked http:\/\/example\.org.* on .*workers\/bad\.js/);
  });

  test("a request that no policy stops, both where it is asked and where it reaches the network", async () => {
    const app = await openApp({ folder });
    await app.page.goto("http://example.org/left").catch((error: Error) => expect(error.message).toContain("ERR_"));
    expect([app.seen.left, app.seen.reached]).toEqual([["GET http://example.org/left"], ["example.org"]]);
    app.seen.reached.length = 0;
    await app.close();
  });
});

describe("an opened app", () => {
  test("gives chosen files to the page and its downloads to the test", async () => {
    const { page, close } = await openApp({ folder });
    await page.locator("#file").setInputFiles(csvFile("tickets.csv", "ticket_no\n7\n"));
    await expect.poll(() => page.textContent("#text")).toBe("ticket_no\n7\n");
    expect(await download(page, () => page.click("#save"))).toEqual({ name: "saved.csv", body: Buffer.from("a,b\n1,2\n") });
    await close();
  });

  test("tells when the first picture was drawn, and what axe-core finds serious", async () => {
    const app = await openApp({ folder });
    expect(await firstPicture(app)).toBeGreaterThan(0);
    expect((await seriousViolations(app.page)).join()).toMatch(/critical image-alt: .*#nameless/);
    await app.close();
  });

  test("keeps a committed row through a SIGKILL of the whole browser when it has a profile", async () => {
    const profileDir = join(home, "profile");
    for (const rows of [1, 2, 3]) {
      const { page, kill } = await openApp({ folder, profileDir });
      await page.evaluate(() => (globalThis as unknown as { keep(row: string): Promise<void> }).keep("row"));
      expect(await page.evaluate(() => (globalThis as unknown as { count(): Promise<number> }).count())).toBe(rows);
      await kill();
    }
    expect(existsSync(profileDir)).toBe(true);
  });

  test("begins with empty storage when it has no profile", async () => {
    const { page, close } = await openApp({ folder });
    expect(await page.evaluate(() => (globalThis as unknown as { count(): Promise<number> }).count())).toBe(0);
    await close();
  });
});
