import { describe, expect, test } from "vitest";
import { EngineGone } from "../../src/db/errors.ts";
import { LedgerDamaged, LedgerFull, LedgerNewer, LedgerUnavailable } from "../../src/records/ledger/errors.ts";
import { sentence } from "../../src/ui/trouble.ts";

describe("sentence", () => {
  test("what the ledger says to the owner is shown as it stands", () => {
    const errors = [new LedgerFull(), new LedgerNewer(), new LedgerDamaged(3, "two bytes differ"), new LedgerUnavailable("it is full.")];
    expect(errors.map(sentence)).toEqual(errors.map((error) => error.message));
  });

  test("what comes from the machine is put in the owner's words", () => {
    expect(sentence(new EngineGone("worker terminated"))).toMatch(/records are safe/);
    expect(sentence(new DOMException("0x8007", "QuotaExceededError"))).toMatch(/no room left/);
    expect(sentence(new DOMException("0x8007", "NotReadableError"))).not.toContain("0x8007");
  });

  test("an error nobody foresaw shows its message", () => {
    expect(sentence(new TypeError("x is not a function"))).toBe("Something went wrong that Saltbench did not expect: x is not a function");
    expect(sentence(Object.assign(new Error("odd"), { name: "toString" }))).toContain("did not expect: odd");
    expect(sentence("plain text")).toContain("plain text");
  });
});
