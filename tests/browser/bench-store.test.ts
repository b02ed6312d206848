import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { BENCH_CONTRACT } from "../records/bench-log/contract.ts";
import { type App, closeAll, openApp } from "./harness.ts";
import { builtPage } from "./pages/built.ts";

let built: Awaited<ReturnType<typeof builtPage>>, app: App;
beforeAll(async () => {
  built = await builtPage();
  app = await openApp({ folder: built.folder });
});
afterAll(async () => {
  await closeAll();
  built.remove();
});

describe("the bench log in the browser's own store", () => {
  test.each(BENCH_CONTRACT)("$claim", async ({ claim }) => {
    expect(await app.page.evaluate((one) => trial.benchCheck(one), claim)).toBeUndefined();
  });

  test("a photo of which a single bit changed on the disk is told, never shown", async () => {
    const told = await app.page.evaluate(async () => {
      const store = await trial.openBrowserBench("trial bench damage"), { id } = await store.begin({});
      const photo = await store.addPhoto(id, "reel", trial.bytes(400, 3) as Uint8Array<ArrayBuffer>);
      await trial.change("trial bench damage", "pictures", (pictures) => {
        const damaged = trial.bytes(400, 3);
        damaged[7] = (damaged[7] ?? 0) ^ 1;
        pictures.put(damaged, photo.id);
      });
      return (await trial.refused(store.picture(photo), "PhotoDamaged")).message;
    });
    expect(told).toBe("This photo has changed on the disk and cannot be shown.");
  });

  test("a log that a newer version wrote is not opened for writing", async () => {
    const name = await app.page.evaluate(async () => {
      (await trial.raw("trial bench newer", 99)).close();
      return (await trial.refused(trial.openBrowserBench("trial bench newer"), "LedgerNewer")).name;
    });
    expect(name).toBe("LedgerNewer");
  });
});
