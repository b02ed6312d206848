import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parquetWriteBuffer } from "hyparquet-writer";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { sheetData, xlsx } from "../records/formats/making-workbooks.ts";
import { finish, press, takeIn } from "./bench-steps.ts";
import { type App, closeAll, firstPicture, openApp } from "./harness.ts";
import { bringIn, look } from "./import-page.ts";
import { caches, changed, firstVisit, footer, kept, VERSION } from "./offline-page.ts";
import { visit } from "./visit.ts";

const ROOMS = ["morning", "card?reel=any+spinning&complaint=C03", "failures", "stock", "wear", "labour", "season", "bench", "records", "settings", "method", "cautions"];
/** Headings of no template, so that the sheet has to be understood. */
const HEADINGS = ["Job No", "Date in", "Reel", "Work done"];
const rows = (letter: string) => [[`${letter}-1`, "05/01/2026", "Withy 5", "replaced line roller bearing"], [`${letter}-2`, "27/01/2026", "Withy 5", "drag washers worn, fitted new"]];
const STRANGE: readonly (readonly [string, Uint8Array])[] = [
  ["our-jobs.xlsx", xlsx([{ name: "Jobs", xml: sheetData([HEADINGS, ...rows("X")]) }])],
  ["our-jobs.parquet", new Uint8Array(parquetWriteBuffer({ columnData: HEADINGS.map((name, at) => ({ name, data: rows("P").map((row) => row[at] ?? ""), type: "STRING" as const })) }))],
];

const homes = mkdtempSync(join(tmpdir(), "saltbench-offline-"));
afterAll(async () => {
  await closeAll();
  rmSync(homes, { recursive: true, force: true });
});

describe("after one visit, with the server stopped", () => {
  let app: App, page: Page;
  beforeAll(async () => {
    app = await firstVisit();
    page = app.page;
    await app.stopServer();
    await page.reload();
    await firstPicture(app);
  });
  afterEach(() => app.expectClean());
  afterAll(() => app.startServer());

  test("the demo opens and every room of it, though only the first was ever seen", async () => {
    expect(await page.getByText("Demo records.").count()).toBe(1);
    for (const room of ROOMS) {
      await visit(page, room);
      expect(await page.locator("main").innerText(), room).not.toMatch(/could not be (loaded|worked out)/);
    }
  });

  test("a sheet prints", async () => {
    await visit(page, "stock");
    expect((await page.pdf({ format: "A4" })).toString("latin1").match(/\/Type\s*\/Page[^s]/g)?.length).toBeGreaterThan(0);
  });

  test("a reel is taken in, logged and finished", async () => {
    await visit(page, "bench");
    await press(page, "Put the demo away and begin");
    await page.getByRole("button", { name: "Take a reel in" }).waitFor();
    await takeIn(page);
    await finish(page);
  });

  test.each(STRANGE)("a sheet of one's own comes in: %s", async (name, bytes) => {
    await visit(page, "records");
    await look(page, { name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
    await bringIn(page);
  });

  test("what is written stays, and the page says its version", async () => {
    await page.reload();
    await visit(page, "records");
    await page.getByText("our-jobs.xlsx").first().waitFor();
    expect(await footer(page)).toContain(`Saltbench ${VERSION}`);
    expect(VERSION).toMatch(/^\d+\.\d+\.\d+ \([0-9a-f]{8}\)$/);
  });
});

describe("as an app of its own", () => {
  test("the browser finds nothing that stands against installing it, and its icons are what the manifest says", async () => {
    // A window that forgets everything cannot install anything.
    const app = await firstVisit({ profileDir: join(homes, "installing") }), session = await app.context.newCDPSession(app.page);
    const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
    expect(installabilityErrors).toEqual([]);
    const { errors, data, url } = await session.send("Page.getAppManifest");
    expect([errors, new URL(url).pathname]).toEqual([[], "/saltbench.webmanifest"]);
    const manifest = JSON.parse(data ?? "") as Record<string, string> & { icons: { src: string; sizes: string; purpose: string }[] };
    expect(manifest).toMatchObject({ name: "Saltbench", start_url: "./", display: "standalone" });
    expect((await fetch(url)).headers.get("content-type")).toBe("application/manifest+json");
    for (const { src, sizes } of manifest.icons) {
      const answer = await fetch(new URL(src, url)), body = Buffer.from(await answer.arrayBuffer());
      expect([answer.headers.get("content-type"), `${body.readUInt32BE(16)}x${body.readUInt32BE(20)}`]).toEqual(["image/png", sizes]);
    }
    expect(manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual(["192x192 any", "512x512 any", "512x512 maskable"]);
    app.expectClean();
    await app.close();
  });
});

describe("files kept on the disk", () => {
  const spoil = (page: Page, ending: string) => page.evaluate(async (end) => {
    const cache = await globalThis.caches.open((await globalThis.caches.keys())[0] ?? "");
    const [request] = (await cache.keys()).filter(({ url }) => url.endsWith(end)), found = request && await cache.match(request);
    if (!request || !found) throw new Error(`nothing ends with ${end}`);
    const bytes = new Uint8Array(await found.arrayBuffer());
    bytes[bytes.length - 2] = (bytes.at(-2) ?? 0) ^ 1;
    await cache.put(request, new Response(bytes, { headers: found.headers }));
  }, ending);

  test("that have changed are seen, said and fetched again; without a server they are taken away and said, and come back later", async () => {
    const app = await firstVisit(), { page } = app;
    const [all] = await caches(page);
    expect(await changed(page)).toEqual([]);
    await spoil(page, ".csv");
    expect(await changed(page)).toHaveLength(1);
    await page.reload();
    await page.getByText("A part of Saltbench had changed on this computer").waitFor();
    await page.getByText("It was fetched again.").waitFor();
    expect([await changed(page), await caches(page)]).toEqual([[], [all]]);

    await spoil(page, "saltbench.webmanifest");
    await app.stopServer();
    await page.reload();
    await page.getByText("It could not be fetched again.").waitFor();
    expect(await caches(page)).toEqual([[all?.[0], (all?.[1] ?? 0) - 1]]);
    await app.startServer();
    await page.reload();
    await page.getByText("It was fetched again.").waitFor();
    expect([await changed(page), await caches(page)]).toEqual([[], [all]]);
    await app.close();
  }, 400_000);

  test("need room: where there is none the first visit works, says so, and leaves the little room to the records", async () => {
    const app = await openApp({ offline: true }), { page } = app;
    await (await app.context.newCDPSession(page)).send("Storage.overrideQuotaForOrigin", { origin: new URL(app.url).origin, quotaSize: 20_000_000 });
    await firstPicture(app);
    await page.getByText("Needs a network: there is no room to keep the program").waitFor();
    await visit(page, "stock");
    expect(await caches(page)).toEqual([]);
    await app.close();
  });

  test("are none where the browser has no service workers, and the page says that it needs a network", async () => {
    const app = await openApp();
    await firstPicture(app);
    await app.page.getByText("Needs a network: this browser keeps no programs here").waitFor();
    app.expectClean();
    await app.close();
  });
});

describe("a power cut while the files are being kept", () => {
  test.each([1, 60])("when %s of them are there is healed by the next visit", async (least) => {
    const profileDir = mkdtempSync(join(homes, "kill-"));
    const app = await openApp({ offline: true, profileDir });
    await firstPicture(app);
    const begun = await app.page.waitForFunction(async (count) => {
      const [name] = await globalThis.caches.keys(), there = name === undefined ? 0 : (await (await globalThis.caches.open(name)).keys()).length;
      return there >= count && there;
    }, least, { polling: 20 });
    const before = await begun.jsonValue();
    await app.kill();
    const next = await openApp({ offline: true, profileDir });
    await firstPicture(next);
    await kept(next.page);
    expect(await changed(next.page)).toEqual([]);
    expect((await caches(next.page))[0]?.[1]).toBeGreaterThan(Number(before));
    await next.stopServer();
    await next.page.reload();
    await firstPicture(next);
    await visit(next.page, "season");
    await next.startServer();
    await next.close();
  }, 400_000);
});
