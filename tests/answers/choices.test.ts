import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { choices, recordsSpan } from "../../src/answers/choices/choices.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const ticket = (ticket_no: string, received_on: string, more = {}) => ({ ticket_no, received_on, model: "Whinbeck 40", maker: "Brackhelm", ...more });

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

describe("choices and recordsSpan", () => {
  test("offer what the records hold, most frequent first, positions in the order of their list", async () => {
    await fill(engine, {
      tickets: [
        ticket("1", "2024-01-01", { reel_kind: "spinning", water: "salt", finished_on: "2024-01-02", serial: "A" }),
        ticket("2", "2024-02-01", { reel_kind: "spinning", water: "fresh", finished_on: "2024-02-02" }),
        ticket("3", "2024-03-01", { reel_kind: "fly", water: "salt", maker: "Eldmere", model: "Ombry 8" }),
      ],
      orders: [
        { order_no: "1", supplier: "A", part_no: "P", ordered_on: "2024-03-20" },
        { order_no: "2", supplier: "A", part_no: "P", ordered_on: "2024-03-10", arrived_on: "2034-03-20" },
      ],
      findings: [{ ticket_no: "1", position: "ar_clutch" }, { ticket_no: "2", position: "line_roller_bearing" }],
    });
    expect(await choices(engine)).toEqual({
      reel_kinds: [{ value: "spinning", tickets: 2 }, { value: "fly", tickets: 1 }],
      makers: [{ value: "Brackhelm", tickets: 2 }, { value: "Eldmere", tickets: 1 }],
      waters: [{ value: "salt", tickets: 2 }, { value: "fresh", tickets: 1 }],
      models: [
        { maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", tickets: 2 }, { maker: "Eldmere", model: "Ombry 8", reel_kind: "fly", tickets: 1 },
      ],
      groups: [{ group_code: "LR", group_name: "Line roller" }, { group_code: "AR", group_name: "Anti-reverse" }],
      positions: [
        { position: "line_roller_bearing", name: "Line roller bearing", group_code: "LR", group_name: "Line roller" },
        { position: "ar_clutch", name: "One-way clutch", group_code: "AR", group_name: "Anti-reverse" },
      ],
    });
    expect(await recordsSpan(engine)).toEqual({
      from: "2024-01-01", to: "2024-03-01", latest: "2024-03-20", tickets: 3, findings: 2, models: 2, parts: 0, orders: 2, open_tickets: 1, tickets_with_serial: 1,
    });
  });

  test("are empty, not failing, without records", async () => {
    await fill(engine, {});
    expect((await choices(engine)).positions).toEqual([]);
    expect(await recordsSpan(engine)).toMatchObject({ from: null, to: null, latest: null, tickets: 0 });
  });
});
