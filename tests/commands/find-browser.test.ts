import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { findBrowser } from "../../src/commands/find-browser.mjs";
import type { World } from "../../src/commands/find-browser.mjs";
import { desktopOpener } from "../../src/commands/open-browser.mjs";

/** A bare Debian machine with root and nothing installed, where npm and Debian both deliver. */
function world(own: Partial<World> = {}): World & { done: string[] } {
  const done: string[] = [];
  const shelf: string[] = [];
  return {
    env: { PATH: process.env.PATH }, platform: "linux", arch: "x64", is_root: true, done,
    installed: () => { done.push("looked"); return [...shelf]; },
    version: (path) => (path.startsWith("/broken") ? null : "140.0"),
    packaged: () => { done.push("npm"); return { path: "/cache/chromium", env: { LD_LIBRARY_PATH: "/cache/lib" } }; },
    debian: () => { done.push("apt"); shelf.push("/usr/bin/chromium"); },
    ...own,
  };
}

describe("the browser for the tests", () => {
  test("is the one named, before any other is even looked for", () => {
    const here = world({ env: { SALTBENCH_BROWSER: "/mine" } });
    expect(findBrowser(here)).toEqual({ path: "/mine", env: {}, version: "140.0", source: "named" });
    expect(here.done).toEqual([]);
  });

  test("is never another than the one named: one that does not run is an error", () => {
    expect(() => findBrowser(world({ env: { SALTBENCH_BROWSER: "/broken" } }))).toThrow("SALTBENCH_BROWSER names /broken, which is not a Chromium or Chrome that runs.");
  });

  test("is the first installed one that runs, and nothing is fetched", () => {
    const here = world({ installed: () => ["/broken/stub", "/usr/bin/google-chrome", "/usr/bin/chrome"] });
    expect(findBrowser(here)).toMatchObject({ path: "/usr/bin/google-chrome", source: "installed" });
    expect(here.done).toEqual([]);
  });

  test("comes from npm with the libraries it brings when none is installed", () => {
    const here = world();
    expect(findBrowser(here)).toMatchObject({ path: "/cache/chromium", env: { LD_LIBRARY_PATH: "/cache/lib" }, source: "packaged" });
    expect(here.done).toEqual(["looked", "npm"]);
  });

  test("comes from Debian's packages when npm's does not run, or npm fails, or the machine is no x64", () => {
    const broken = { packaged: () => ({ path: "/broken/chromium", env: {} }) };
    const offline = { packaged: () => { throw new Error("no net"); } };
    const found = [broken, offline, { arch: "arm64" }].map((own) => findBrowser(world(own)));
    expect(found.map(({ path, source }) => [path, source])).toEqual(Array(3).fill(["/usr/bin/chromium", "debian"]));
  });

  test("is an error that says what was tried and what to do when no way is left", () => {
    const none = world({ is_root: false, packaged: () => { throw new Error("no net"); } });
    expect(() => findBrowser(none)).toThrow(/no Chromium or Chrome is installed that runs; packaged: no net; Debian's packages need root.*Install Chromium.*SALTBENCH_BROWSER=/);
    expect(none.done).not.toContain("apt");
  });

  test("passes over the ways that SALTBENCH_BROWSER_WITHOUT leaves out", () => {
    const here = world({ env: { PATH: process.env.PATH, SALTBENCH_BROWSER_WITHOUT: "installed,packaged" } });
    expect(findBrowser(here).source).toBe("debian");
    expect(here.done).toEqual(["apt", "looked"]);
  });
});

test("npm start opens a browser only on a desktop, and never when asked not to", () => {
  const folder = mkdtempSync(join(tmpdir(), "saltbench-desktop-"));
  const opener = join(folder, "xdg-open");
  writeFileSync(opener, "#!/bin/sh\n", { mode: 0o755 });
  const desktop = { PATH: folder, DISPLAY: ":0" };
  expect(desktopOpener(desktop, "linux")).toBe(opener);
  for (const off of [{ SALTBENCH_NO_OPEN: "1" }, { CI: "true" }, { SSH_CONNECTION: "10.0.0.1" }, { DISPLAY: "" }, { PATH: "/nowhere" }]) {
    expect(desktopOpener({ ...desktop, ...off }, "linux")).toBeNull();
  }
  rmSync(folder, { recursive: true });
});
