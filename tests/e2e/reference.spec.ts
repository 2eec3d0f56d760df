import { expect, type Page } from "@playwright/test";
import { makeBundle, pushUps, tamper } from "../unit/reference/making.ts";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { choose, oneAthlete, openAthlete } from "./from-elsewhere.ts";
import { goTo } from "./page.ts";

/** 10 surely below 22, 12 that could be either, 8 above. */
const bundle = makeBundle({
  rows: [
    { count: 10, marks: [pushUps(null, 20)] },
    { count: 12, marks: [pushUps(20, 25)] },
    { count: 8, marks: [pushUps(25, null)] },
  ],
});

/** Lets a file fall on the place for it. */
async function drop(desk: Page, name: string, bytes: Uint8Array): Promise<void> {
  const dataTransfer = await desk.evaluateHandle(
    ([file, content]) => {
      const carried = new DataTransfer();
      carried.items.add(new File([new Uint8Array(content)], file, { type: "application/zip" }));
      return carried;
    },
    [name, [...bytes]] as const,
  );
  await desk
    .getByText("Drop an anonymous data file or a reference table here")
    .dispatchEvent("drop", { dataTransfer });
  await expect(desk.getByRole("heading", { name })).toBeVisible();
}

test("a bundle from elsewhere is added, an athlete stands among its marks, and removed it is gone", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await oneAthlete(desk);
  await openAthlete(desk);
  await expect(desk.getByText("Not enough to compare").first()).toBeVisible();

  await goTo(desk, "Athletes");
  await desk.getByRole("link", { name: "Results from elsewhere" }).click();
  await expect(desk.getByText("Nothing from elsewhere yet")).toBeVisible();
  await expectForEverybody(desk);

  const forged = tamper(bundle, "marks.csv", (text) => text.replace("women", "nobody"));
  await choose(tapeline, "forged.zip", forged);
  await expect(desk.getByRole("alert")).toContainText("Line 2 of marks.csv has something under category");
  await desk.getByRole("button", { name: "Choose another file" }).click();

  await choose(tapeline, "north.zip", bundle.bytes);
  await expect(desk.getByText("30 results, Q1 2026.")).toBeVisible();
  await expect(desk.getByRole("textbox", { name: "Where is it from?" })).toBeFocused();
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("Say where this file is from")).toBeVisible();
  await desk.keyboard.type("Northern halls");
  await expectForEverybody(desk);
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("row", { name: /Northern halls/ })).toContainText("30");
  await expectForEverybody(desk);

  await drop(desk, "again.zip", bundle.bytes);
  await expect(desk.getByText("You already have this file, under “Northern halls”")).toBeVisible();
  await desk.getByRole("button", { name: "Close" }).click();

  await openAthlete(desk);
  // From 10 to 22 of 30: Wilson's lower end of the one is 0.1923, the upper end of the other 0.8582, worked out apart.
  await expect(
    desk.getByText("No place can be given: normal variation reaches from the lowest to the highest"),
  ).toBeVisible();
  await expect(desk.getByText("among 30 results from Northern halls")).toBeVisible();
  const board = await tapeline.openBoard();
  await expect(board.getByRole("banner")).toContainText("1 test done");
  await expect(board.locator("body")).not.toContainText(/Northern halls|in every 100/);

  await goTo(desk, "Share");
  await desk.getByRole("link", { name: "Results from elsewhere" }).click();
  await desk.getByRole("button", { name: "Remove the file from Northern halls" }).click();
  await desk.getByRole("alertdialog").getByRole("button", { name: "Remove it" }).click();
  await expect(desk.getByText("Nothing from elsewhere yet")).toBeVisible();
  await openAthlete(desk);
  await expect(desk.getByText("Not enough to compare").first()).toBeVisible();
  await expect(desk.getByRole("main")).not.toContainText("Northern halls");
});
