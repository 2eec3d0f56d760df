import { expect, test } from "vitest";
import { createRefusedAnswer } from "../../../electron/shell/trouble/refused-page.ts";

const answer = createRefusedAnswer({
  title: "No store",
  lines: [`<img src=x onerror="a()"> & 'b'`, "Second."],
});

test("the page shows its words as text, whatever is in them", async () => {
  const response = await answer(new Request("app://desk/"));
  const page = await response.text();
  expect(page).toContain("<p>&#60;img src=x onerror=&#34;a()&#34;&#62; &#38; &#39;b&#39;</p>");
  expect(page).toContain("<p>Second.</p>");
  expect(page).not.toMatch(/<img|<button|<form|<script|<a /);
});

test("there is nothing beside the page and its looks", async () => {
  const statuses = ["/", "/refused.css", "/trpc/day.current", "/index.html"].map(
    async (path) => (await answer(new Request(`app://desk${path}`))).status,
  );
  expect(await Promise.all(statuses)).toEqual([200, 200, 404, 404]);
});
