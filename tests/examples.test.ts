import { describe, expect, test } from "vitest";

/** Every `// =>` example of a docstring in src/stats is run, and its answer compared to the digits it prints. */
const TEXTS = import.meta.glob<string>("../src/stats/*.ts", { query: "?raw", import: "default", eager: true });
const MODULES = import.meta.glob<Record<string, unknown>>("../src/stats/*.ts", { eager: true });

interface Example { file: string; code: string; expected: string }

/** The lines of one `@example`: those before a `// =>` line prepare it. */
function examplesOf([file, text]: [string, string]): Example[] {
  const docstrings = text.match(/\/\*\*[\s\S]*?\*\//g) ?? [];
  return docstrings.flatMap((docstring) =>
    docstring.split("@example").slice(1).flatMap((block) => {
      const lines = block.split("\n").map((line) => line.replace(/^\s*\*\/?\s?/, "").trim()).filter((line) => line !== "");
      const prepared: string[] = [];
      return lines.flatMap((line) => {
        const [code, expected] = line.split(/;?\s*\/\/ =>\s*/);
        if (expected === undefined) { prepared.push(line); return []; }
        return [{ file, code: [...prepared, `return (${code ?? ""});`].join("\n"), expected }];
      });
    }));
}

/** A number with decimals is met when the answer rounds to it; anything else must be met exactly. */
function pattern(expected: string): unknown {
  const marked = expected.replace(/(?<![\w."'])-?\d+\.\d+(?:e-?\d+)?(?![\w"'])/g, (literal) => `near("${literal}")`);
  const near = (literal: string) => {
    const [digits, exponent] = literal.split("e");
    return expect.closeTo(Number(literal), (digits?.split(".")[1]?.length ?? 0) - Number(exponent ?? 0));
  };
  return new Function("near", `return (${marked});`)(near);
}

const exported = Object.values(MODULES).flatMap((module) => Object.entries(module));
const examples = Object.entries(TEXTS).flatMap(examplesOf);

describe("examples in src/stats", () => {
  test("every exported function shows an example that can be run", () => {
    const shown = examples.map((example) => example.code).join("\n");
    const functions = exported.filter(([, value]) => typeof value === "function").map(([name]) => name);
    expect(functions.filter((name) => !new RegExp(`\\b${name}\\(`).test(shown))).toEqual([]);
  });

  test.each(examples)("$file gives what it says: $code", ({ code, expected }) => {
    const names = exported.map(([name]) => name);
    const answer: unknown = new Function(...names, code)(...exported.map(([, value]) => value));
    expect(answer).toEqual(pattern(expected));
  });
});
