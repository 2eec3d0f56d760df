import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import type { BoardConsent } from "../../electron/store/tables/athletes.ts";
import { countBundle } from "../checks/count-bundle.ts";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { callDoor, goTo } from "./page.ts";
import { answerSaveDialog } from "./sheets.ts";

test("for the open web, linked, and the one file of the day", async ({ tapeline }) => {
  const { desk, folder } = tapeline;
  await callDoor(desk, "day.openDemo");
  await goTo(desk, "Share");
  const main = desk.getByRole("main");

  // What could be found out, before and after, in figures that a picture can't say.
  const risk = main.getByRole("region", { name: "What somebody could find out" });
  await expect(risk.getByRole("row", { name: /Bibs identified for certain/ })).toContainText(
    /(\d+) of \1.*0 of \d+/,
  );
  await expect(risk.getByRole("row", { name: /Best chance of identifying/ })).toContainText("1 in 5");

  await expect(risk.getByRole("row", { name: /hidden on the big screen/ })).toContainText(
    /[1-9]\d* of (\d+).*0 of \1/,
  );
  await expectForEverybody(desk);

  // Of the few who hide here one would be left alone in a profile, and without that one there are too few alike.
  await desk.getByText("One row per athlete, less detail").click();
  await expect(main.getByText("Nothing can be shared in groups of 5.")).toBeVisible();
  await expect(main.getByText(/They are hidden on the big screen/)).toBeVisible();
  await showByBib(desk);
  await expect(risk.getByRole("row", { name: /Rows that are unique in the file/ })).toContainText(/0 of \d+/);
  await expect(main.getByText("profiles.csv", { exact: true })).toBeVisible();
  await expectForEverybody(desk);

  await desk.getByText("The internet (groups of 11 or more)").click();
  await expect(main.getByText("Nothing can be shared in groups of 11.")).toBeVisible();
  await desk.getByText("Separate rows, more detail (recommended)").click();
  await expect(risk.getByRole("row", { name: /Best chance of identifying/ })).toContainText("1 in 11");

  const file = join(folder, "web.zip");
  await answerSaveDialog(tapeline, file);
  const word = desk.getByRole("textbox", { name: "Type “share” to continue" });
  await word.fill("share");
  await word.press("Enter");
  await expect(desk.getByText("Saved as web.zip.")).toBeVisible();
  const counted = countBundle(await readFile(file));
  expect(counted.k).toBeGreaterThanOrEqual(11);
  expect(counted.k).toBe(counted.told.kReached);
  await expect(main.getByRole("row", { name: /written/ })).toContainText("11");

  // The same day in smaller groups could be laid beside it.
  await desk.getByText("Other derby organisers (groups of 5 or more)").click();
  await expect(
    main.getByText(/A file of this day was already shared on .*, in groups of 11\./),
  ).toBeVisible();
  await expect(word).toHaveCount(0);
  await expectForEverybody(desk);
});

/** Whoever hides from the board agrees to be shown by bib. */
async function showByBib(desk: Page): Promise<void> {
  const listed = await desk.evaluate(async () => {
    const pages = [0, 1, 2].map(async (page) => {
      const input = encodeURIComponent(JSON.stringify({ page }));
      return (await (await fetch(`/trpc/people.list?input=${input}`)).json()).result.data.people;
    });
    return (await Promise.all(pages)).flat();
  });
  const people = listed as { athleteId: number; board: BoardConsent; share: boolean }[];
  for (const { athleteId, board, share } of people) {
    if (board === "hidden") await callDoor(desk, "people.setConsent", { athleteId, board: "bib", share });
  }
}
