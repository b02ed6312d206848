import { describe, expect, test } from "vitest";
import { keepFiles, lookOver, NoRoom, OtherBytes, type Shelf } from "../../src/offline/keep-files.ts";
import { isOurs, nameOf, pathOf, type Program } from "../../src/offline/program.ts";

const SCOPE = "http://127.0.0.1:4173/";
// printf one | openssl dgst -sha256 -binary | base64, and so on.
const PROGRAM: Program = {
  version: "1", bytes: 6,
  files: { "assets/a-AbCdEf12.js": "dpLDrTVAu4A8Ags67mbNiIcSMjTqDG5xQ8Ct1z/0Me0=", "index.html": "P8TM/nRYcOLA2Z9x8w/wZWyN7dQcwdfT03aw2+aF4vM=" },
};
const [ASSET, PAGE] = Object.keys(PROGRAM.files) as [string, string];

/** A server and a cache of texts by path. */
function place(server: Record<string, string>, kept: Record<string, string> = {}, change: Partial<Shelf> = {}) {
  const asked: string[] = [], path = (address: string) => address.slice(SCOPE.length), texts = new Map(Object.entries(kept));
  const shelf: Shelf = {
    scope: SCOPE,
    room: async () => 1_000_000,
    elsewhere: async () => undefined,
    fetch: async (address, { cache }) => {
      asked.push(`${path(address)} ${cache}`);
      const text = server[path(address)];
      if (text === undefined) throw new TypeError("Failed to fetch");
      return new Response(text);
    },
    cache: {
      match: async (address) => (texts.has(path(String(address))) ? new Response(texts.get(path(String(address)))) : undefined),
      put: async (address, response) => void texts.set(path(String(address)), await response.text()),
      delete: async (address) => texts.delete(path(String(address))),
    },
    ...change,
  };
  return { shelf, asked, texts };
}

describe("keepFiles", () => {
  test("fetches every file once, those without a hash in their name past what the browser kept", async () => {
    const { shelf, asked, texts } = place({ [ASSET]: "one", [PAGE]: "two" });
    await keepFiles(PROGRAM, shelf);
    expect([...texts]).toEqual([[ASSET, "one"], [PAGE, "two"]]);
    expect(asked).toEqual([`${ASSET} default`, `${PAGE} no-cache`]);
  });

  test("leaves what an attempt before kept whole, and fetches anew what it kept by half", async () => {
    const { shelf, asked, texts } = place({ [ASSET]: "one", [PAGE]: "two" }, { [ASSET]: "one", [PAGE]: "tw" });
    await keepFiles(PROGRAM, shelf);
    expect([asked, texts.get(PAGE)]).toEqual([[`${PAGE} no-cache`], "two"]);
  });

  test("takes a hashed file from another version instead of the network, but never a page", async () => {
    const { shelf, asked, texts } = place({ [PAGE]: "two" }, {}, { elsewhere: async (address) => new Response(address.endsWith(".js") ? "one" : "an older page") });
    await keepFiles(PROGRAM, shelf);
    expect([asked, texts.get(PAGE)]).toEqual([[`${PAGE} no-cache`], "two"]);
  });

  test("passes over what the browser kept when it is not the file the build listed, and asks the server itself", async () => {
    const answers = ["on", "one", "two"];
    const { shelf, texts } = place({}, {}, { fetch: async () => new Response(answers.shift()) });
    await keepFiles(PROGRAM, shelf);
    expect(texts.get(ASSET)).toBe("one");
  });

  test("gives up when the server has another version by now, so that files of two are never kept together", async () => {
    await expect(keepFiles(PROGRAM, place({ [ASSET]: "one", [PAGE]: "newer" }).shelf)).rejects.toThrow(new OtherBytes(PAGE));
  });

  test("keeps nothing where less than twice its size is free, and goes on where the browser does not say", async () => {
    const narrow = place({ [ASSET]: "one", [PAGE]: "two" }, {}, { room: async () => 11 });
    await expect(keepFiles(PROGRAM, narrow.shelf)).rejects.toThrow(NoRoom);
    expect([narrow.asked, narrow.texts.size]).toEqual([[], 0]);
    await keepFiles(PROGRAM, place({ [ASSET]: "one", [PAGE]: "two" }, {}, { room: async () => null }).shelf);
  });
});

describe("lookOver", () => {
  test("says nothing of whole files", async () => {
    expect(await lookOver(PROGRAM, place({}, { [ASSET]: "one", [PAGE]: "two" }).shelf)).toEqual({ mended: [], lost: [] });
  });

  test("fetches anew what has changed or is missing", async () => {
    const { shelf, texts } = place({ [ASSET]: "one", [PAGE]: "two" }, { [ASSET]: "onf" });
    expect(await lookOver(PROGRAM, shelf)).toEqual({ mended: [ASSET, PAGE], lost: [] });
    expect(texts.get(ASSET)).toBe("one");
  });

  test("takes away what has changed and cannot be had, and leaves the rest", async () => {
    const { shelf, texts } = place({}, { [ASSET]: "onf", [PAGE]: "two" });
    expect(await lookOver(PROGRAM, shelf)).toEqual({ mended: [], lost: [ASSET] });
    expect([...texts.keys()]).toEqual([PAGE]);
  });
});

describe("a request", () => {
  test("is told by its path below the app's folder, wherever that lies; other addresses are none of ours", () => {
    expect(pathOf("http://127.0.0.1:4173/#/stock", SCOPE)).toBe("index.html");
    expect(pathOf("http://h/shop/assets/a.js?x", "http://h/shop/")).toBe("assets/a.js");
    expect(pathOf("http://h/other/", "http://h/shop/")).toBeNull();
    expect(pathOf("https://h/shop/a.js", "http://h/shop/")).toBeNull();
  });

  test("never mixes our caches with another app's at the same address", () => {
    expect([isOurs(nameOf("1")), isOurs("another app")]).toEqual([true, false]);
  });
});
