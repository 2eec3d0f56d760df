import { expect } from "@playwright/test";
import { test } from "./fixture.ts";
import { notInSight } from "./in-sight.ts";
import { callDoor } from "./page.ts";

/** The big screen before the first result. */

test("the big screen says in each language, whole, that nobody is ranked, before there is any result", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  const board = await tapeline.openBoard();
  await board.setViewportSize({ width: 1920, height: 1080 });
  for (const language of ["en", "es"]) {
    await callDoor(desk, "language.choose", { language });
    await board.locator(`html[lang=${language}]`).waitFor();
    await expect(
      board.getByText(language === "en" ? /^Nobody is ranked/ : /^Nadie se clasifica/),
    ).toBeVisible();
    expect.soft(await notInSight(board, "main :is(h1, h2, p)"), language).toEqual([]);
  }
});
