import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { SUPPLY, licencesText, lockedPackages, plainSbom, readLock } from "../../src/commands/write-supply.mjs";

const kept = (name: string) => readFileSync(join(SUPPLY, name), "utf8");
const HOW = "write them again with `node src/commands/write-supply.mjs`";

describe("the lists of what the app is built from", () => {
  test("the SBOM names every package of the lock file in its version, and no other", () => {
    const { bomFormat, components } = JSON.parse(kept("sbom.cdx.json")) as { bomFormat: string; components: { group?: string; name: string; version: string }[] };
    expect(bomFormat).toBe("CycloneDX");
    const named = components.map(({ group, name, version }) => `${group ? `${group}/` : ""}${name}@${version}`);
    expect([...new Set(named)].sort(), HOW).toEqual(lockedPackages(readLock()).map(({ name, version }) => `${name}@${version}`).sort());
  });

  test("the licences are those of the lock file, and each is one that lets the app be given on", () => {
    const packages = lockedPackages(readLock());
    expect(kept("licences.md"), HOW).toBe(licencesText(packages));
    const free = /^(MIT|ISC|0BSD|Unlicense|BSD-[23]-Clause|Apache-2\.0|BSL-1\.0|OFL-1\.1|CC0-1\.0)$/;
    expect(packages.filter(({ dev, license }) => !dev && !license.split(/ (?:AND|OR) /).every((one) => free.test(one)))).toEqual([]);
  });

  test("a list written at another time, on another machine, is the same byte for byte", () => {
    const one = { serialNumber: "urn:uuid:1", metadata: { timestamp: "2026-01-01", tools: [], component: { name: "saltbench" } }, components: [{ "bom-ref": "b@1", properties: [] }, { "bom-ref": "a@1" }], dependencies: [{ ref: "b@1", dependsOn: ["d", "c"] }] };
    const other = { ...one, serialNumber: "urn:uuid:2", metadata: { ...one.metadata, timestamp: "2027-01-01" }, components: [...one.components].reverse(), dependencies: [{ ref: "b@1", dependsOn: ["c", "d"] }] };
    expect(plainSbom(JSON.stringify(one))).toBe(plainSbom(JSON.stringify(other)));
  });

  test("a package counts as part of the app when any of its places in the lock file does", () => {
    const packages = { "": {}, "node_modules/a": { version: "1", license: "MIT", dev: true }, "node_modules/b/node_modules/a": { version: "1", license: "MIT" }, "node_modules/@s/c": { version: "2", dev: true } };
    expect(lockedPackages({ packages })).toEqual([{ name: "@s/c", version: "2", license: "not said", dev: true }, { name: "a", version: "1", license: "MIT", dev: false }]);
  });
});
