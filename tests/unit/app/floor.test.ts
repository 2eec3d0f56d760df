import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const frame = readFileSync(
  join(import.meta.dirname, "../../../renderer/parts/frame/Frame.module.css"),
  "utf8",
);

test("the floor behind every screen is painted by strips: no pixel of it asks for an angle", () => {
  expect(frame).toContain("1px 96px repeat-y");
  expect(frame).not.toContain("conic-gradient");
});
