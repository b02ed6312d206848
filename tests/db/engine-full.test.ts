import { expect, test } from "vitest";
import { EngineFull } from "../../src/db/errors.ts";
import { openEngine } from "./open.ts";

test("work that needs more memory than there is says so in the owner's words, and what was there before still is", async () => {
  const engine = await openEngine();
  await engine.run(["insert into ledger.suppliers (supplier) values ('Ringmoss')"]);
  const failed = await engine.rows("select length(list(repeat('x', 1000000))::varchar) as n from range(2000)").catch((error: unknown) => error);
  expect(failed).toBeInstanceOf(EngineFull);
  expect(String(failed)).toMatch(/not enough memory .* what was kept before is safe/);
  expect(await engine.rows("select supplier from ledger.suppliers")).toEqual([{ supplier: "Ringmoss" }]);
});
