import { expect, test } from "vitest";
import { jobName } from "../../src/answers/labour/job-name.ts";
import { modelName } from "../../src/answers/model-name.ts";

test("a model is called with its maker, and alone where none is written or all are meant", () => {
  expect([modelName({ maker: "Eldmere", model: "Withy 5" }), modelName({ maker: null, model: "Withy 5" }), modelName({ maker: "*", model: "*" })])
    .toEqual(["Eldmere Withy 5", "Withy 5", "*"]);
});

test("a job is called with its kind of reel, and says when none is written", () => {
  expect([jobName({ job: "drag", reel_kind: "fly" }), jobName({ job: "drag", reel_kind: null }), jobName({ job: null, reel_kind: "fly" })])
    .toEqual(["drag, fly", "drag", "job not written, fly"]);
});
