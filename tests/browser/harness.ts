import { readFileSync } from "node:fs";
import type { Server } from "node:http";
import { join } from "node:path";
import { chromium } from "playwright-core";
import type { Browser, BrowserContext, BrowserContextOptions, LaunchOptions, Page } from "playwright-core";
import { findBrowser } from "../../src/commands/find-browser.mjs";
import { APP, staleness } from "../../src/commands/freshness.mjs";
import { serve } from "../../src/commands/server.mjs";
import { nothingSeen, policyLine, wall, watch } from "./watch.ts";
import type { Seen } from "./watch.ts";

export type { Seen } from "./watch.ts";

/** The two sizes the app is made for: a small laptop and a tablet at the bench. */
export const LAPTOP = { width: 1366, height: 768 };
export const TABLET = { width: 820, height: 1180 };

/** Milliseconds to wait for what a page should do: a machine whose two cores are busy needs a minute for the demo. */
const PATIENCE = 120_000;

/** The browser's own errands (updates, hints, sign-in) must not mix with what the app does. */
const QUIET = [
  "--disable-background-networking", "--disable-component-update", "--disable-default-apps", "--disable-domain-reliability",
  "--disable-sync", "--metrics-recording-only", "--no-default-browser-check", "--no-first-run", "--no-pings",
];

export interface AppOptions {
  viewport?: { width: number; height: number };
  /** Folder of a browser profile that outlives the browser; without it each app begins with empty storage. */
  profileDir?: string;
  /** Cookies and storage to begin with, as `context.storageState()` gives them; not together with `profileDir`. */
  storage?: Exclude<BrowserContextOptions["storageState"], undefined>;
  /** What follows the address, for instance `#/stock`. */
  path?: string;
  colorScheme?: "light" | "dark";
  /** Built app to serve instead of `dist/app`. */
  folder?: string;
  /** Lets the app keep itself for use without a network. Most tests do not look at that, and do without the work. */
  offline?: boolean;
}

export interface App {
  page: Page;
  context: BrowserContext;
  url: string;
  seen: Seen;
  /** @throws {Error} listing everything that was seen */
  expectClean(): void;
  /** Ends the server, as a computer without a network has none. */
  stopServer(): Promise<void>;
  /** Starts it again at the same address, with the build of another folder if one is given. */
  startServer(folder?: string): Promise<void>;
  /** Ends the browser and all its processes at once, as a power cut does. */
  kill(): Promise<void>;
  close(): Promise<void>;
}

interface Place { url: string; seen: Seen; args: string[]; stop(): Promise<void>; start(folder: string): Promise<void>; close(): Promise<void> }

const places = new Map<string, Promise<Place>>();
const browsers = new Map<string, Promise<Browser>>();
const open = new Set<App>();

function requireFresh(): void {
  const why = staleness();
  if (why === null || (why === "stale" && process.env.SALTBENCH_STALE_OK === "1")) return;
  throw new Error(`The built app is ${why}: run \`npm run build\`${why === "stale" ? ", or allow it with SALTBENCH_STALE_OK=1" : ""}.`);
}

async function openPlace(folder: string): Promise<Place> {
  if (folder === APP) requireFresh();
  const seen = nothingSeen();
  const begin = (from: string, at = 0) => serve({ folder: from, port: at, onReport: (report) => seen.policy.push(policyLine(report)) });
  let server: Awaited<ReturnType<typeof serve>> | null = await begin(folder);
  const own = server.port, stop = async () => { await server?.close(); server = null; };
  const { server: proxy, port } = await wall((host) => seen.reached.push(host));
  const args = [`--proxy-server=127.0.0.1:${port}`, `--proxy-bypass-list=<-loopback>;127.0.0.1:${own}`];
  return {
    url: server.url, seen, args, stop,
    start: async (from) => { await stop(); server = await begin(from, own); },
    close: async () => { await stop(); await closed(proxy); },
  };
}

/** One server and one wall a folder and process, so that a profile meets the same origin each time it is opened. */
function placeOf(folder: string): Promise<Place> {
  const known = places.get(folder) ?? openPlace(folder);
  places.set(folder, known);
  return known;
}

const closed = (server: Server) => new Promise<void>((done) => { server.close(() => done()); server.closeAllConnections(); });

function launchOptions(place: Place): LaunchOptions {
  const { path, env } = findBrowser();
  const asRoot = process.getuid?.() === 0 ? ["--no-sandbox"] : [];
  return { executablePath: path, headless: true, env: { ...process.env, ...env }, args: [...QUIET, ...asRoot, ...place.args] };
}

async function openContext(folder: string, place: Place, options: AppOptions): Promise<BrowserContext> {
  const { viewport = LAPTOP, colorScheme = "light", profileDir, storage } = options;
  const screen = { viewport, colorScheme, acceptDownloads: true, locale: "en-GB", timezoneId: "Europe/London" };
  if (profileDir !== undefined) return chromium.launchPersistentContext(profileDir, { ...launchOptions(place), ...screen });
  const browser = browsers.get(folder) ?? chromium.launch(launchOptions(place));
  browsers.set(folder, browser);
  return (await browser).newContext({ ...screen, ...(storage !== undefined && { storageState: storage }) });
}

/** What a browser without service workers is to the app. */
const withoutServiceWorker = () => { Reflect.deleteProperty(Navigator.prototype, "serviceWorker"); };

/** The process that leads the group of all the browser's processes. */
async function leader(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send("SystemInfo.getProcessInfo");
  const found = processInfo.find((each) => each.type === "browser");
  if (!found) throw new Error("The browser does not say which process it is.");
  return found.id;
}

async function killGroup(context: BrowserContext, pid: number): Promise<void> {
  const gone = new Promise<void>((done) => context.once("close", () => done()));
  process.kill(-pid, "SIGKILL");
  await gone;
}

/** What was seen, one line a deed; empty when all was well. */
export const deeds = (seen: Seen): string[] => Object.entries(seen).flatMap(([kind, lines]) => (lines as string[]).map((line) => `${kind}: ${line}`));

/**
 * Opens the built app in a real browser, with watchers on all it does; `seen.reached` and `seen.policy` are shared by
 * all apps of one folder.
 *
 * @throws {Error} if `dist/app` is missing or older than the sources, or no browser can be had
 */
export async function openApp(options: AppOptions = {}): Promise<App> {
  const { folder = APP, path = "" } = options;
  const place = await placeOf(folder);
  const context = await openContext(folder, place, options);
  context.setDefaultTimeout(PATIENCE);
  if (!options.offline) await context.addInitScript(withoutServiceWorker);
  const browser = context.browser();
  if (!browser) throw new Error("The context has no browser.");
  const pid = await leader(browser);
  const seen: Seen = { ...nothingSeen(), reached: place.seen.reached, policy: place.seen.policy };
  watch(context, new URL(place.url).origin, seen);
  const page = context.pages()[0] ?? (await context.newPage());
  const app: App = {
    page, context, url: place.url, seen,
    expectClean: () => { if (deeds(seen).length > 0) throw new Error(`The app is not clean:\n${deeds(seen).join("\n")}`); },
    stopServer: place.stop,
    startServer: (other = folder) => place.start(other),
    kill: async () => { open.delete(app); if (options.profileDir === undefined) browsers.delete(folder); await killGroup(context, pid); },
    close: async () => { open.delete(app); await context.close(); },
  };
  open.add(app);
  await page.goto(place.url + path);
  return app;
}

/** A page without an app, to draw or reckon in. */
export async function emptyPage(): Promise<Page> {
  const nowhere = { url: "about:blank", seen: nothingSeen(), args: [], stop: async () => undefined, start: async () => undefined, close: async () => undefined };
  return (await openContext("", nowhere, {})).newPage();
}

/** Ends every browser and server this process opened; each browser test file calls it in `afterAll`. */
export async function closeAll(): Promise<void> {
  for (const app of open) await app.close();
  for (const browser of browsers.values()) await (await browser).close();
  for (const place of places.values()) await (await place).close();
  browsers.clear();
  places.clear();
}

/**
 * Milliseconds from the start of the visit until the first room's first chart or table was drawn.
 *
 * @throws {Error} with what the page says and what was seen when there is none after two minutes
 */
export async function firstPicture({ page, seen }: App): Promise<number> {
  const at = page.waitForFunction(() => performance.getEntriesByName("saltbench:first-picture")[0]?.startTime);
  try {
    return (await (await at).jsonValue()) as number;
  } catch (error) {
    throw new Error(`No first picture. The page says:\n${await page.innerText("body")}\n${deeds(seen).join("\n")}`, { cause: error });
  }
}

/** A file that exists only in the browser, for `page.locator(…).setInputFiles(…)`; paths of real files go there as they are. */
export const csvFile = (name: string, text: string) => ({ name, mimeType: "text/csv", buffer: Buffer.from(text) });

/** The file that `act` makes the page hand over. */
export async function download(page: Page, act: () => Promise<unknown>): Promise<{ name: string; body: Buffer }> {
  const [file] = await Promise.all([page.waitForEvent("download"), act()]);
  return { name: file.suggestedFilename(), body: readFileSync(await file.path()) };
}

const AXE = join(import.meta.dirname, "../../node_modules/axe-core/axe.min.js");

/** What axe-core finds serious or critical on the page as it stands, one line a rule with the elements it means. */
export async function seriousViolations(page: Page): Promise<string[]> {
  await page.evaluate(readFileSync(AXE, "utf8"));
  const violations = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; impact: string; help: string; nodes: { target: unknown[] }[] }[] }> } };
    return (await axe.run()).violations;
  });
  return violations.filter(({ impact }) => ["serious", "critical"].includes(impact))
    .map(({ id, impact, help, nodes }) => `${impact} ${id}: ${help} (${nodes.map((node) => String(node.target)).join(", ")})`);
}
