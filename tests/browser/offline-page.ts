import { cpSync, mkdtempSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { APP } from "../../src/commands/freshness.mjs";
import { writeServiceWorker } from "../../src/commands/installable.mjs";
import { plainFiles } from "../../src/commands/plain-files.mjs";
import { firstPicture, openApp, type App, type AppOptions } from "./harness.ts";

/** Version the built app calls itself. */
export const VERSION = /<meta name="version" content="([^"]+)"/.exec(readFileSync(join(APP, "index.html"), "utf8"))?.[1] ?? "";
export const NEWER = "0.2.0 (0ffb0a7d)";

const CODE = /\.(js|css|html)$/;

/** Another version of the built app, in a folder of its own: it calls itself `NEWER`, and all its rooms' scripts have other names. */
export async function newerBuild(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "saltbench-newer-"));
  cpSync(APP, folder, { recursive: true, filter: (path) => !/\.(br|gz)$/.test(path) });
  const paths = plainFiles(folder), names = paths.flatMap((path) => /^assets\/(Room-[\w-]{8})\.js$/.exec(path)?.[1] ?? []);
  const renamed = (text: string) => names.reduce((so_far, name) => so_far.replaceAll(name, `${name.slice(0, 5)}N${name.slice(6)}`), text);
  for (const path of paths.filter((one) => CODE.test(one))) {
    writeFileSync(join(folder, path), renamed(readFileSync(join(folder, path), "utf8")).replaceAll(VERSION, NEWER));
    if (renamed(path) !== path) renameSync(join(folder, path), join(folder, renamed(path)));
  }
  await writeServiceWorker(folder, NEWER);
  return folder;
}

/** Waits until the app says that it opens without a network. */
export const kept = (page: Page) => page.getByText("Opens without a network").waitFor();

/** A first visit, until the app has kept itself. */
export async function firstVisit(options: AppOptions = {}): Promise<App> {
  const app = await openApp({ offline: true, ...options });
  await firstPicture(app);
  await kept(app.page);
  return app;
}

/** Names of the caches and how many files each holds. */
export const caches = (page: Page) => page.evaluate(async () =>
  Promise.all((await globalThis.caches.keys()).map(async (name) => [name, (await (await globalThis.caches.open(name)).keys()).length] as const)));

/** Paths of kept files whose bytes are not those of the built app. */
export async function changed(page: Page): Promise<string[]> {
  const hashes = await page.evaluate(async () => {
    const found: [string, string][] = [], cache = await globalThis.caches.open((await globalThis.caches.keys())[0] ?? "");
    for (const request of await cache.keys()) {
      const body = await (await cache.match(request))?.arrayBuffer() ?? new ArrayBuffer(0);
      found.push([new URL(request.url).pathname.slice(1), btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest("SHA-256", body))))]);
    }
    return found;
  });
  const script = readFileSync(join(APP, "service-worker.js"), "utf8");
  return hashes.filter(([path, hash]) => !script.includes(`"${path}":\`${hash}\``) && !script.includes(`${hash}`)).map(([path]) => path);
}

/** Asks the server for a newer version, as the browser does at each visit and the page every hour. */
export const askForNewer = (page: Page) => page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration())?.update(); });

/** What the foot of the index says about the program. */
export const footer = (page: Page) => page.locator(".version").innerText();
