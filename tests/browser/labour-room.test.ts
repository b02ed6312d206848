import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { closeAll, csvFile, openApp, seriousViolations } from "./harness.ts";
import type { App } from "./harness.ts";
import { cells, hash, settled, visit } from "./visit.ts";

const BY_JOB = "Times at the bench; open a job for its models";
/** Minutes as the sheet writes them: "1 h 07" or "22 min". */
const minutes = (words = "") => Number(/^(\d+)\s*h/.exec(words)?.[1] ?? 0) * 60 + Number(/(\d+)(\s*min)?$/.exec(words)?.[1]);
let app: App, page: Page;
beforeAll(async () => {
  app = await openApp({ path: "#/labour" });
  page = app.page;
  await page.getByRole("heading", { level: 2, name: "Job by job" }).waitFor({ timeout: 120_000 });
});
afterEach(() => app.expectClean());
afterAll(closeAll);

describe("the Labour room", () => {
  test("gives the usual time, the time for a quote and the count of every job, in words and as strips", async () => {
    await visit(page, "labour");
    const [heads, first = []] = await cells(page, BY_JOB);
    expect(heads?.slice(0, 6)).toEqual(["Job", "Jobs", "Usual", "4 in 5 within", "Average", "Average likely"]);
    expect(first[0]).toBe("full service, spinning");
    // The scenario's expected median of 67 minutes for this job, and its 90 % point of 99 (invented data).
    expect(minutes(first[2])).toBeGreaterThan(58);
    expect(minutes(first[2])).toBeLessThan(78);
    expect(minutes(first[3])).toBeGreaterThan(minutes(first[2]));
    await page.getByText(/^Full service, spinning usually takes 1\sh\s\d\d, and 4 in 5 are done within 1\sh\s\d\d/).waitFor();
    expect(await page.locator("figure svg g.jobs line").count()).toBeGreaterThan(500);
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("names time and price at the counter for a job and a reel, and keeps the choice in the address", async () => {
    await visit(page, "labour");
    const counter = page.getByRole("region", { name: "At the counter" });
    await counter.getByLabel("Job").selectOption("full service, conventional");
    await counter.getByLabel("Reel").selectOption("Uffenby Jarnvik 30-II");
    expect(hash(page)).toBe("#/labour?job=full service, conventional&reel=Uffenby Jarnvik 30-II");
    // The scenario's two-speed lever drag: charged 78, median 112 to 115 minutes, 101 to 104 at 54 an hour (invented data).
    await counter.getByText(/^Usually 1\sh\s[45]\d at the bench; 4 in 5 are done within 2\sh\s\d\d \(\d+ jobs, this model\). Usually charged: 78\scu\.$/).waitFor();
    await page.getByText(/Jarnvik 30-II, full service: charged 78\scu, its time comes to 1\d\d\scu/).waitFor();
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("holds every job beside the hour's price the owner writes, and says when it is no price", async () => {
    await visit(page, "labour");
    await page.getByText(/your price is 54\scu/).waitFor();
    const price = page.getByLabel("Price of an hour");
    await price.fill("twenty");
    await price.blur();
    await page.getByText("“twenty” is not an amount. Write it in digits, such as 54 or 54.50.").waitFor();
    await price.fill("20");
    await price.blur();
    await page.getByText(/your price is 20\scu\. No job falls clearly short of it\./).waitFor();
    await price.fill("54");
    await price.blur();
    await page.getByText(/your price is 54\scu/).waitFor();
  });

  test("shows the junior learning on the same jobs, as training and not as a ranking", async () => {
    await visit(page, "labour");
    await page.getByText(/T2 took 1\.[23]\d times as long in 2023 and 1\.1\d times as long in 2025: learning shows\./).waitFor();
    await page.getByText(/It is no ranking of people/).waitFor();
  });

  test("opens a job's models by keyboard and keeps it in the address", async () => {
    await visit(page, "labour");
    await page.getByRole("button", { name: "full service, spinning: its models" }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "full service, spinning, model by model" }).waitFor();
    expect(hash(page)).toBe("#/labour?job=full service, spinning");
    const [, ...rows] = await cells(page, "Models with ten jobs or more");
    expect(rows.map((row) => row[0])).toContain("Brackhelm Whinbeck 40");
    expect(rows.every((row) => Number(row[1]) >= 10)).toBe(true);
    await page.reload();
    await page.getByRole("heading", { name: "full service, spinning, model by model" }).waitFor({ timeout: 120_000 });
    expect(await seriousViolations(page)).toEqual([]);
  });

  test("shows only the kind of reel and the days asked for", async () => {
    await visit(page, "labour?kind=fly");
    const jobs = (await cells(page, BY_JOB)).slice(1);
    expect(jobs.every((row) => row[0]?.endsWith(", fly"))).toBe(true);
    await page.getByLabel("To", { exact: true }).fill("2023-06-30");
    await settled(page);
    expect(hash(page)).toBe("#/labour?kind=fly&to=2023-06-30");
    const fewer = (await cells(page, BY_JOB)).slice(1);
    expect(Number(fewer[0]?.[1])).toBeLessThan(Number(jobs[0]?.[1]));
  });

  test("sets aside hours typed as minutes, waiting counted as work and blanks, counts them and names the line", async () => {
    const usual = Array.from({ length: 30 }, (_, at) => `B-${at},2026-01-05,2026-01-06,Withy 5,fly,full service,${28 + (at % 9)}`);
    const odd = ["B-90,2026-01-05,2026-01-06,Withy 5,fly,full service,1.5", "B-91,2026-01-05,2026-01-06,Withy 5,fly,full service,2880", "B-92,2026-01-05,2026-01-06,Withy 5,fly,full service,"];
    await visit(page, "records");
    await page.getByLabel("Choose files").setInputFiles(csvFile("tickets.csv", ["ticket_no,received_on,finished_on,model,reel_kind,job,labour_min", ...usual, ...odd, ""].join("\n")));
    await page.getByRole("button", { name: "Take the demo out and bring mine in" }).click();
    await page.getByText(/new rows came in/).first().waitFor();
    await visit(page, "labour");
    for (const said of ["1 job looks like hours typed as minutes.", "1 job looks as if waiting was counted as work.", "1 finished job has no minutes written."]) {
      await page.getByText(said).waitFor();
    }
    const [, job = []] = await cells(page, BY_JOB);
    expect([job[0], job[1], job[2]]).toEqual(["full service, fly", "30", "32 min"]);
    const aside = (await cells(page, /whose minutes were set aside/)).slice(1);
    expect(aside.map((row) => [row[1], row.at(-1)]).sort()).toEqual([["B-90", "tickets.csv, line 32"], ["B-91", "tickets.csv, line 33"]]);
  });
});
