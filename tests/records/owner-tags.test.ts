import { expect, test } from "vitest";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { OWNER_SALT, ownerTag, ownerTags } from "../../src/records/owner-tags.ts";

test("an owner's tag is the same however the name is written, and means nothing", async () => {
  const tag = await ownerTag("Ada  Tarn", "salt");
  expect(tag).toMatch(/^owner-[2-9A-HJKMNP-TV-Z]{6}$/);
  expect([await ownerTag("ada tarn", "salt"), await ownerTag("Ádá-Tarn", "salt")]).toEqual([tag, tag]);
  expect([await ownerTag("Ida Tarn", "salt"), await ownerTag("Ada Tarn", "other")]).not.toContain(tag);
  expect(await ownerTag(" - ", "salt")).toBeNull();
});
test("a shop's salt is made once and kept with its settings, so that tags stay what they are", async () => {
  const ledger = openMemoryLedger(), first = await ownerTags(ledger, ["Ada Tarn", "B."]);
  expect([(await ownerTags(ledger, ["Ada Tarn"])).get("Ada Tarn"), (await ledger.setting(OWNER_SALT))?.length]).toEqual([first.get("Ada Tarn"), 32]);
  expect((await ownerTags(openMemoryLedger(), ["Ada Tarn"])).get("Ada Tarn")).not.toBe(first.get("Ada Tarn"));
});
test("a thousand owners have a thousand tags", async () => {
  const names = Array.from({ length: 1000 }, (_, n) => `owner number ${n}`), tags = await Promise.all(names.map((name) => ownerTag(name, "fixed")));
  expect(new Set(tags).size).toBe(1000);
});
