import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadInterchange } from "../../src/answers/interchange/load-interchange.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

const READ = "-- Groups.\nselect part_no, interchange, refused is not null as refused from interchange order by part_no";

describe("loadInterchange", () => {
  test("fills the table anew from the catalogue, and twice gives the same", async () => {
    await fill(engine, {
      parts: [
        { part_no: "B-1", family: "ball bearing", size: "7x11x3", name: "sealed" },
        { part_no: "B-2", family: "ball bearing", size: "11-7-3", name: "2RS", replaces: "B-0" },
        { part_no: "M-1", name: "Springs, assorted" },
      ],
    });
    await loadInterchange(engine);
    expect(await engine.rows(READ)).toEqual([
      { part_no: "B-0", interchange: "bearing 7x11x3 sealed", refused: false },
      { part_no: "B-1", interchange: "bearing 7x11x3 sealed", refused: false },
      { part_no: "B-2", interchange: "bearing 7x11x3 sealed", refused: false },
      { part_no: "M-1", interchange: "M-1", refused: true },
    ]);
  });

  test("leaves the table empty when there is no catalogue", async () => {
    await fill(engine, {});
    expect(await engine.rows(READ)).toEqual([]);
  });
});
