import { mkdir, writeFile } from "node:fs/promises";
import { resolve } from "node:path";
import { CONTENTS } from "./contents.ts";
import { demoShop } from "./demo.ts";
import { pageHtml } from "./page-html.ts";

const FOLDER = resolve(import.meta.dirname, "../pages"), INTRODUCTION = [
  "# How Saltbench works things out: notebooks",
  "Each asks one question and answers it with the code of the app: on the records of an invented shop, where the truth is known because we put it there, and on published data, where others have worked it out before. They are a manual for a reader who wants to see it done.",
];

/** Runs every notebook and writes a page of each, and the list of them, to `notebooks/pages`. */
export async function main(): Promise<number> {
  const demo = demoShop();
  try {
    await mkdir(FOLDER, { recursive: true });
    for (const { file, question, load } of CONTENTS) {
      const { notebook } = await load();
      await writeFile(resolve(FOLDER, `${file}.html`), pageHtml(`${question} – Saltbench`, await notebook(demo), { before: [["index.html", "All notebooks"]] }));
      process.stdout.write(`notebooks/pages/${file}.html\n`);
    }
    await writeFile(resolve(FOLDER, "index.html"), pageHtml("Saltbench: notebooks", INTRODUCTION, { after: CONTENTS.map(({ file, question }) => [`${file}.html`, question]) }));
    process.stdout.write("notebooks/pages/index.html\n");
    return 0;
  } finally {
    await demo.close();
  }
}
