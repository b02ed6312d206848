import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type { Page } from "playwright-core";
import { VERDICT_WORDS } from "../../src/answers/failures/verdict.ts";
import { closeAll, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { cells, hash, settled, visit } from "./visit.ts";

const WHINBECK = "model=Brackhelm+Whinbeck+40";
let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/failures" });
  page = app.page;
  await page.getByRole("heading", { name: "Reels to be wary of" }).waitFor({ timeout: 120_000 });
});
afterEach(() => app.expectClean());
afterAll(closeAll);

describe("the exploded view", () => {
  test("names every part with its counts, in the order they come off, and leads to its page by keyboard", async () => {
    await visit(page, "failures");
    const axis = page.getByRole("region", { name: "Line roller", exact: true });
    const parts = await axis.getByRole("link").allInnerTexts();
    expect(parts.map((text) => text.split("\n")[0])).toEqual(["Line roller seal / cap", "Line roller (sleeve)", "Line roller bearing"]);
    expect(parts[2]).toMatch(/\d+ of [\d,]+, likely between \d+ and \d+\s%/);
    await axis.getByRole("link", { name: /^Line roller bearing/ }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "Line roller bearing, model by model" }).waitFor();
    expect(hash(page)).toBe("#/failures?position=line_roller_bearing");
  });

  test("is drawn for each kind of reel the shop has seen, and the choice stays in the address", async () => {
    await visit(page, "failures");
    for (const [kind, axis] of [["fly", "Drag"], ["conventional", "Free-spool clutch"], ["baitcaster", "Level wind"], ["spinning", "Rotor and bail"]] as const) {
      await page.getByRole("group", { name: "Kind of reel drawn" }).getByText(kind, { exact: true }).click();
      await page.getByRole("region", { name: axis, exact: true }).waitFor();
      expect(await page.locator("figure.exploded a").count()).toBeGreaterThan(5);
    }
    expect(hash(page)).toContain("drawing=spinning");
  });

  test("of a model writes each part's verdict in its own words beside a fill of its own", async () => {
    await visit(page, `failures?${WHINBECK}`);
    const shown = await page.locator("figure.exploded a").evaluateAll((links) => links.map((link) => [link.querySelector(".word")?.textContent ?? "", (link as HTMLElement).dataset["tone"] ?? ""]));
    expect(shown.length).toBeGreaterThan(15);
    for (const [word = ""] of shown) expect(VERDICT_WORDS).toContain(word);
    const tones = new Map(shown.map(([word = "", tone = ""]) => [word, tone]));
    expect(new Set(tones.values()).size).toBe(tones.size);
  });
});

describe("a model's page", () => {
  test("says first whether to warn customers, why with the counts of both sides, and what to do, all above the fold of a small laptop but the last", async () => {
    await visit(page, `failures?${WHINBECK}`);
    const said = await page.getByRole("region", { name: "Whether to warn customers" }).innerText();
    expect(said).toMatch(/Yes, warn customers. The anti-reverse clutch/);
    expect(said).toMatch(/had failed in 32 of 236 \(14\s%\); on the other models in 34 of 1,239 \(3\s%\)/);
    expect(await page.getByText("Each of the 3 seasons says so by itself").evaluate((line) => line.getBoundingClientRect().bottom <= innerHeight)).toBe(true);
    await page.getByRole("heading", { name: "What it comes in for" }).waitFor();
    await page.getByText(/\d tickets on \d+ reels told apart by serial number/).waitFor();
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("does not warn of the cheap reel that looks twice as bad only by how it comes in", async () => {
    await visit(page, "failures?model=Wexmoor+Slipdene+45");
    expect(await page.getByRole("region", { name: "Whether to warn customers" }).innerText()).not.toMatch(/Yes, warn/);
    const [heads = [], ...rows] = await cells(page, /^Every row/);
    const clutch = rows.find(([name = ""]) => name.startsWith("Anti-reverse clutch"));
    expect(clutch?.[heads.indexOf("Verdict")]).toBe("cannot tell apart from how these reels come in");
  });

  test("leads to another model beside it, part by part", async () => {
    await visit(page, `failures?${WHINBECK}`);
    await page.getByLabel("Put another model beside it").selectOption("Brackhelm Dovekin 25");
    await page.getByRole("heading", { name: "Brackhelm Whinbeck 40 beside Brackhelm Dovekin 25" }).waitFor();
    await page.getByText(/^More often on the Brackhelm Whinbeck 40: anti-reverse clutch/).waitFor();
    expect(hash(page)).toBe("#/failures?model=Brackhelm Whinbeck 40&other=Brackhelm Dovekin 25");
    const [, ...rows] = await cells(page, /^Part by part/);
    expect(rows.length).toBeGreaterThan(10);
    expect(await seriousViolations(page)).toEqual([]);
  });
});

describe("a series' page", () => {
  test("is reached from the page of each size, judges all sizes together, and leads to a part's reasons and back to a size", async () => {
    await visit(page, "failures?model=Ostvarg+Ekholt+30");
    await page.getByRole("link", { name: "All sizes of the Ostvarg Ekholt together" }).click();
    await page.getByRole("heading", { name: "Should you warn customers about the Ostvarg Ekholt series?" }).waitFor();
    const [heads = [], ...rows] = await cells(page, /^Failed of those inspected: all sizes together/), seal = rows.find(([name = ""]) => name.startsWith("Body")) ?? [];
    const counts = ["All sizes", "Ostvarg Ekholt 30", "Ostvarg Ekholt 50"].map((head) => (seal[heads.indexOf(head)] ?? "").split(" of ").map(Number));
    expect(counts[0]).toEqual([(counts[1]?.[0] ?? 0) + (counts[2]?.[0] ?? 0), (counts[1]?.[1] ?? 0) + (counts[2]?.[1] ?? 0)]);
    expect(await seriousViolations(page)).toEqual([]);
    await page.getByRole("button", { name: /^Body.* on all sizes: why$/ }).click();
    await page.getByRole("region", { name: "Verdict and its reasons" }).getByText(/on Ostvarg Ekholt \(all sizes\)/).waitFor();
    expect(hash(page)).toBe("#/failures?position=body_seal&series=Ostvarg Ekholt");
  });
});

describe("a verdict", () => {
  test("opens from the list by keyboard to its reasons and to raw and like-with-like figures side by side", async () => {
    await visit(page, "failures");
    await page.getByRole("button", { name: /^Anti-reverse clutch.* on Brackhelm Whinbeck 40: why$/ }).focus();
    await page.keyboard.press("Enter");
    const reasons = page.getByRole("region", { name: "Verdict and its reasons" });
    await reasons.getByText("stands out", { exact: true }).first().waitFor();
    await reasons.getByText(/neither chance nor the way these reels come in explains it/).first().waitFor();
    const [heads = [], ...rows] = await cells(page, /^As counted, and like with like/);
    const planned = rows.find(([name]) => name === "planned service") ?? [];
    const of = (head: RegExp) => planned[heads.findIndex((one) => head.test(one))] ?? "";
    expect(of(/^This model/)).toBe("32 of 236");
    expect(Number(of(/^As counted/))).toBeCloseTo((32 / 236) / (34 / 1239), 1);
    const [value = NaN, low = NaN, high = NaN] = of(/^Like with like/).match(/[\d.]+/g)?.map(Number) ?? [];
    expect([low > 1, low < value, value < high]).toEqual([true, true, true]);
    expect(await seriousViolations(page)).toEqual([]);
  });
});

describe("a part's page", () => {
  test("names in its funnel the model outside the limits, and in words what it shows", async () => {
    await visit(page, "failures?position=ar_clutch");
    expect(await page.locator("figure svg g.named text").allTextContents()).toContain("Brackhelm Whinbeck 40");
    await page.getByText(/Brackhelm Whinbeck 40 stands out, \d\.\d times as often/).waitFor();
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("draws the owner's change of habit as a dated line, keeps it over a reload, and undoes it", async () => {
    await visit(page, "failures?position=drag_knob_seal");
    await page.getByLabel("From this day on").fill("2024-07-01");
    await page.getByLabel("What changed").fill("changed at every service");
    await page.getByRole("button", { name: "Write it down" }).click();
    await page.getByText("Written down.").waitFor();
    await expect.poll(() => page.locator("figure svg g.habit-name text").allTextContents()).toEqual(["1 Jul 2024: changed at every service"]);
    await page.reload();
    await page.getByRole("heading", { name: "Drag knob seal, model by model" }).waitFor({ timeout: 120_000 });
    await settled(page);
    await expect.poll(() => page.locator("figure svg g.habit line").count()).toBe(1);
    await page.getByRole("button", { name: "Take out: changed at every service" }).click();
    await expect.poll(() => page.locator("figure svg g.habit line").count()).toBe(0);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => page.locator("figure svg g.habit line").count()).toBe(1);
    await page.getByRole("button", { name: "Take out: changed at every service" }).click();
    await expect.poll(() => page.locator("figure svg g.habit line").count()).toBe(0);
  });

  test("says which batch went bad, and which reels still carry one", async () => {
    await visit(page, "failures");
    const lot = page.getByRole("region", { name: "Bad batches" });
    await lot.getByText(/^bad batch/).first().waitFor();
    await lot.getByText(/reels still carry one$/).first().click();
    expect((await cells(page, "Reels that still carry a part of this batch")).length).toBeGreaterThan(1);
  });
});
