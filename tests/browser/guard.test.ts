import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { APP } from "../../src/commands/freshness.mjs";
import { DOCUMENT_POLICY, SERVICE_WORKER_POLICY, WORKER_POLICY } from "../../src/commands/headers.mjs";
import { plainFiles } from "../../src/commands/plain-files.mjs";
import { serve } from "../../src/commands/server.mjs";
import { closeAll, firstPicture, openApp, TABLET } from "./harness.ts";
import type { App } from "./harness.ts";

const ROOMS = ["Morning sheet", "Reel card", "Failures", "Stock", "Salt & wear", "Labour", "Season", "Bench", "Records"] as const;

afterAll(closeAll);

/** Goes through every room of the index by its link, as an owner does. */
async function visitEveryRoom({ page }: App): Promise<string[]> {
  const rooms = page.getByRole("navigation", { name: "Rooms" }).getByRole("link");
  const titles = await rooms.allTextContents();
  for (const title of titles) {
    await enter(page, title);
    await page.waitForLoadState("networkidle");
  }
  return titles;
}

async function enter(page: Page, title: string): Promise<void> {
  await page.getByRole("navigation", { name: "Rooms" }).getByRole("link", { name: title }).click();
  await page.getByRole("heading", { level: 1, name: title }).waitFor();
}

describe("the built app", () => {
  test("opens the demo, walks through every room and comes back without one foreign request, policy report, console line or error", async () => {
    const app = await openApp({ offline: true });
    await firstPicture(app);
    const rooms = await visitEveryRoom(app);
    await app.page.getByText("Opens without a network").waitFor();
    expect(rooms).toEqual(ROOMS);
    await enter(app.page, ROOMS[0]);
    await app.page.reload();
    await firstPicture(app);
    app.expectClean();
    await app.close();
  });

  test("is as clean on a dark tablet", async () => {
    const app = await openApp({ viewport: TABLET, colorScheme: "dark" });
    await firstPicture(app);
    await visitEveryRoom(app);
    app.expectClean();
    await app.close();
  });

  test("runs in workers whose scripts the server knows as workers", async () => {
    const app = await openApp();
    await firstPicture(app);
    const paths = app.page.workers().map((worker) => new URL(worker.url()).pathname);
    expect(paths.join()).toContain("/workers/engine.worker-");
    expect(paths.filter((path) => !path.startsWith("/workers/"))).toEqual([]);
    await app.close();
  });
});

describe("the build as served", () => {
  let server: Awaited<ReturnType<typeof serve>>;
  beforeAll(async () => { server = await serve({ folder: APP }); });
  afterAll(() => server.close());
  const policy = async (path: string) => (await fetch(server.url + path)).headers.get("content-security-policy");

  test("gives the page the security headers", async () => {
    const { headers } = await fetch(server.url);
    expect(Object.fromEntries(headers)).toMatchObject({
      "content-security-policy": DOCUMENT_POLICY,
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "cross-origin-opener-policy": "same-origin",
      "cross-origin-resource-policy": "same-origin",
    });
    expect(headers.get("permissions-policy")).toContain("geolocation=()");
  });

  test("gives WebAssembly to the workers' scripts and to nothing else", async () => {
    const paths = plainFiles(APP).filter((path) => !/\.(br|gz)$/.test(path));
    const workers = paths.filter((path) => path.startsWith("workers/"));
    expect(workers.length).toBeGreaterThanOrEqual(2);
    const due = (path: string) => (workers.includes(path) ? WORKER_POLICY : path === "service-worker.js" ? SERVICE_WORKER_POLICY : DOCUMENT_POLICY);
    for (const path of paths) expect([path, await policy(path)]).toEqual([path, due(path)]);
  });

  test("has no address of another host in its page, styles or own scripts' loading code", () => {
    const page = readFileSync(join(APP, "index.html"), "utf8");
    const styles = plainFiles(APP).filter((path) => path.endsWith(".css")).map((path) => readFileSync(join(APP, path), "utf8"));
    for (const text of [page, ...styles]) expect(text).not.toMatch(/(?:href|src|url\(|@import)\s*=?\s*["'(]?\s*(?:https?:)?\/\//);
    expect(page).not.toMatch(/<script(?![^>]*\ssrc=)|<style|\son\w+=|\sstyle=/);
  });
});
