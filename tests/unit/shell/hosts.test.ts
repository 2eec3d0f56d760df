import { expect, test } from "vitest";
import { belongsTo } from "../../../electron/shell/scheme/hosts.ts";

test.each(["app://desk/", "app://desk/assets/a.js?x#y"])("%s is the desk's", (url) => {
  expect(belongsTo("desk", url)).toBe(true);
});

test.each([
  "",
  "desk",
  "about:blank",
  // Chromium hands addresses over in lower case; anything else did not come from there.
  "app://DESK/",
  "app://board/",
  "app://desk.example/",
  "app://desk./",
  "app://desk:81/",
  "app://user@desk/",
  "app://desk@board/",
  "app:desk/",
  "apps://desk/",
  "file://desk/",
  "https://desk/",
  "blob:app://desk/0",
  "data:text/html,app://desk/",
])("%j is not the desk's", (url) => {
  expect(belongsTo("desk", url)).toBe(false);
});
