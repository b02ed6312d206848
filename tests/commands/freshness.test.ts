import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { sourceHash, staleness } from "../../src/commands/freshness.mjs";
import { missingPackages } from "../../src/commands/install.mjs";
import { isEnough } from "../../src/commands/node-version.mjs";

const home = mkdtempSync(join(tmpdir(), "saltbench-fresh-"));
const write = (path: string, text: string | object) => {
  mkdirSync(join(home, path, ".."), { recursive: true });
  writeFileSync(join(home, path), typeof text === "string" ? text : JSON.stringify(text));
};

beforeEach(() => {
  rmSync(home, { recursive: true });
  write("src/a.ts", "one");
  write("src/rooms/b.ts", "two");
});
afterAll(() => rmSync(home, { recursive: true }));

describe("the hash of the sources", () => {
  const hash = () => sourceHash(home, ["src", "lock.json"]);

  test("stays when only times change, as a checkout does", () => {
    const before = hash();
    utimesSync(join(home, "src/a.ts"), new Date(0), new Date(0));
    expect(hash()).toBe(before);
  });

  test("changes with a content, a name, a new file and a moved boundary between two files", () => {
    const seen = new Set([hash()]);
    write("src/a.ts", "onet"); write("src/rooms/b.ts", "wo"); seen.add(hash());
    write("src/c.ts", ""); seen.add(hash());
    rmSync(join(home, "src/c.ts")); write("src/d.ts", ""); seen.add(hash());
    write("lock.json", "{}"); seen.add(hash());
    expect(seen.size).toBe(5);
  });
});

describe("the built app", () => {
  const where = () => ({ app: join(home, "app"), hash: "h1" });

  test("is missing without its page or without its stamp", () => {
    write("app/.built.json", { source_hash: "h1" });
    expect(staleness(where())).toBe("missing");
    write("app/index.html", "");
    rmSync(join(home, "app/.built.json"));
    expect(staleness(where())).toBe("missing");
  });

  test("is stale once the sources differ, and fresh while they do not", () => {
    write("app/index.html", "");
    write("app/.built.json", { source_hash: "h1" });
    expect(staleness(where())).toBeNull();
    expect(staleness({ ...where(), hash: "h2" })).toBe("stale");
  });
});

describe("the packages that are missing", () => {
  const lock = (packages: Record<string, object>) => ({ packages: { "": {}, ...packages } });
  const install = (packages: Record<string, object>) => {
    write("node_modules/.package-lock.json", lock(packages));
    for (const path of Object.keys(packages)) write(`${path}/package.json`, {});
  };

  test("are none when all that is locked is there in its version", () => {
    write("package-lock.json", lock({ "node_modules/x": { version: "1.0.0" } }));
    install({ "node_modules/x": { version: "1.0.0" }, "node_modules/extra": { version: "9.0.0" } });
    expect(missingPackages(home)).toEqual([]);
  });

  test("are all of them after an install that was cut off, which leaves no list", () => {
    write("package-lock.json", lock({ "node_modules/x": { version: "1.0.0" } }));
    write("node_modules/x/package.json", {});
    expect(missingPackages(home)).toEqual(["node_modules/x"]);
  });

  test("include one of another version and one whose folder is gone", () => {
    write("package-lock.json", lock({ "node_modules/x": { version: "1.0.0" }, "node_modules/y": { version: "2.0.0" } }));
    install({ "node_modules/x": { version: "1.0.1" }, "node_modules/y": { version: "2.0.0" } });
    rmSync(join(home, "node_modules/y"), { recursive: true });
    expect(missingPackages(home)).toEqual(["node_modules/x", "node_modules/y"]);
  });

  test("include an optional one only when it is made for this machine", () => {
    const here = { os: [process.platform], cpu: [process.arch] };
    write("package-lock.json", lock({
      "node_modules/here": { version: "1.0.0", optional: true, ...here },
      "node_modules/elsewhere": { version: "1.0.0", optional: true, os: ["aix"], cpu: ["ppc64"] },
      "node_modules/whim": { version: "1.0.0", optional: true },
    }));
    install({});
    expect(missingPackages(home)).toEqual(["node_modules/here"]);
  });
});

test("Node 20.19 and newer are enough, older ones are not", () => {
  const versions = ["18.20.8", "20.9.0", "20.18.3", "20.19.0", "20.20.2", "22.1.0", "25.0.0"];
  expect(versions.filter(isEnough)).toEqual(["20.19.0", "20.20.2", "22.1.0", "25.0.0"]);
});
