import { expect, test } from "vitest";
import { median } from "./median.ts";
import { scriptsBeforeRooms } from "./sizes.ts";

test("the scripts before the rooms are those the page names, what these fetch at once, and what any of them imports by name; not what is fetched later", () => {
  const files: Record<string, string> = {
    "assets/main.js": `import{p}from"./preload.js";p(()=>import("./app.js"),["./app.js"]);`,
    "assets/preload.js": `export{p};`,
    "assets/app.js": `import{a as b}from"./frame.js";import"./theme.js";const later=()=>import("./Room.js");b(later);`,
    "assets/frame.js": `import{c}from"./shared.js";export{c as a};`,
    "assets/theme.js": `import{c}from"./shared.js";c();`,
    "assets/shared.js": `var text="import x from './not-a-script.js'";export{text as c};`,
  };
  const page = `<link rel="modulepreload" href="./assets/shared.js"><link rel="stylesheet" href="./assets/a.css"><script type="module" src="./assets/main.js"></script>`;
  const found = scriptsBeforeRooms(page, (path) => files[path] ?? "");
  expect([...found].sort()).toEqual(["assets/app.js", "assets/frame.js", "assets/main.js", "assets/preload.js", "assets/shared.js", "assets/theme.js"]);
});

test("the median is the middle of the sorted values, or the mean of the two middle ones", () => {
  expect([median([10, 9, 100]), median([4, 1, 3, 2]), median([7])]).toEqual([10, 2.5, 7]);
  expect(() => median([])).toThrow("median: values must hold at least one number, got none");
});
