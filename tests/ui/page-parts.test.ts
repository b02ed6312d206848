// @vitest-environment jsdom
import { beforeEach, describe, expect, test, vi } from "vitest";
import { drawing } from "../../src/ui/drawing.ts";
import { firstPicture } from "../../src/ui/first-picture.ts";
import { fitted } from "../../src/ui/fit-table.ts";
import { printOne } from "../../src/ui/print-one.ts";

beforeEach(() => document.body.replaceChildren());

describe("drawing", () => {
  test("takes out inline style sheets, which the page's policy refuses, and nothing else", () => {
    const made = document.createElement("div");
    made.innerHTML = "<svg><style>text { fill: red }</style><g><style></style><text>7</text></g></svg>";
    const shown = drawing(made);
    expect(shown?.querySelectorAll("style")).toHaveLength(0);
    expect(shown?.querySelector("text")?.textContent).toBe("7");
  });

  test("leaves speaking to the frame around it, whose name and description say what is drawn", () => {
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    expect(drawing(svg)?.getAttribute("aria-hidden")).toBe("true");
  });

  test("of nothing is nothing", () => expect(drawing(null)).toBeNull());
});

describe("fitted", () => {
  /** A box of 500 pixels around a table that needs `whole` pixels as it is and `broken` with words broken over lines. */
  function box(whole: number, broken: number): HTMLElement {
    const made = document.createElement("div");
    const needed = () => (made.dataset["fit"] === "whole" ? whole : broken);
    Object.defineProperties(made, { clientWidth: { get: () => 500 }, scrollWidth: { get: () => Math.max(500, needed()) } });
    return made;
  }

  test("leaves a table whole that has room, breaks words before it moves sideways, and says which in data-fit", () => {
    for (const [whole, broken, fit] of [[400, 300, "whole"], [700, 480, "broken"], [900, 700, "sideways"]] as const) {
      const made = box(whole, broken);
      expect([fitted(made), made.dataset["fit"]]).toEqual([fit, fit]);
    }
  });
});

describe("printOne", () => {
  test("hides everything beside the part while printing and nothing afterwards", () => {
    document.body.innerHTML = "<nav></nav><main><p></p><section id='sheet'><p></p></section><footer></footer></main>";
    const sheet = document.getElementById("sheet");
    if (!sheet) throw new Error("the page of this test has no sheet");
    const hidden = () => [...document.querySelectorAll(".print-none")].map((one) => one.tagName);
    const during: string[] = [];
    vi.stubGlobal("print", () => during.push(...hidden()));
    printOne(sheet);
    expect(during.sort()).toEqual(["FOOTER", "NAV", "P"]);
    dispatchEvent(new Event("afterprint"));
    expect([hidden(), document.body.className]).toEqual([[], ""]);
  });
});

test("firstPicture marks the first time only", () => {
  firstPicture();
  const [first] = performance.getEntriesByName("saltbench:first-picture");
  firstPicture();
  expect(performance.getEntriesByName("saltbench:first-picture")).toEqual([first]);
});
