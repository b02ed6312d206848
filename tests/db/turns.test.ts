import { expect, test } from "vitest";
import { Turns } from "../../src/db/turns.ts";

const later = (done: string[], name: string, fails = false) => async () => {
  done.push(`${name} begins`);
  await new Promise((resolve) => setTimeout(resolve, 5));
  done.push(`${name} ends`);
  if (fails) throw new Error(name);
};

test("each piece begins when the one before has ended, also when that one failed", async () => {
  const turns = new Turns(), done: string[] = [];
  await Promise.allSettled([turns.take(later(done, "a")), turns.take(later(done, "b", true)), turns.take(later(done, "c"))]);
  expect(done).toEqual(["a begins", "a ends", "b begins", "b ends", "c begins", "c ends"]);
});

test("a piece cancelled while it waits rejects at once with the reason and never begins; those behind it do", async () => {
  const turns = new Turns(), done: string[] = [], cancel = new AbortController();
  const first = turns.take(later(done, "a"));
  const second = turns.take(later(done, "b"), cancel.signal);
  const third = turns.take(later(done, "c"));
  cancel.abort("changed my mind");
  await expect(second).rejects.toBe("changed my mind");
  expect(done).toEqual(["a begins"]);
  await Promise.all([first, third]);
  expect(done).toEqual(["a begins", "a ends", "c begins", "c ends"]);
});

test("a piece cancelled before it is asked for rejects with the reason", async () => {
  await expect(new Turns().take(async () => 1, AbortSignal.abort("no"))).rejects.toBe("no");
});
