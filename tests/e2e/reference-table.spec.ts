import { expect, type Page } from "@playwright/test";
import { isoDate } from "../../electron/api/door/calendar.ts";
import { publicKeyOf, shortKey } from "../../electron/api/reference/signature.ts";
import { group, invented, repacked, tableOf } from "../unit/reference/making-table.ts";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { choose, oneAthlete, openAthlete } from "./from-elsewhere.ts";

const [key, otherKey] = [invented(), invented()];
const made = isoDate(new Date());
const dates = {
  made,
  validUntil: `${Number(made.slice(0, 4)) + 1}${made.slice(4)}`.replace("-02-29", "-02-28"),
};
/** Women from 35 to 39: 80 in 100 did fewer than 17 push-ups. */
const women = { ...group, ageBand: "35 to 39", marks: 4213, halls: 61, countsAs: 900 };
const publisher = "Harbour league office";
const table = tableOf({ ...dates, publisher, groups: [women] }, key);

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((place) => {
    location.hash = place;
  }, path);
}

test("a reference table: its key is compared, an athlete stands among its results, and another key is refused", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  const kept = desk.getByRole("region", { name: "Reference tables" });
  const keyOfThem = desk.getByRole("row", { name: `Forget the key of ${publisher}` });
  await oneAthlete(desk);
  await goTo(desk, "/reference");

  // The runtime's own cryptography says no, and not only yes: the descriptor after its signature.
  const forged = repacked(table, (files) => {
    const text = new TextDecoder().decode(files["datapackage.json"]).replace(publisher, "Hillside");
    files["datapackage.json"] = new Uint8Array(Buffer.from(text));
  });
  await choose(tapeline, "forged.zip", forged);
  await expect(desk.getByRole("alert")).toContainText("was changed after it was signed");
  await desk.getByRole("button", { name: "Choose another file" }).click();

  await choose(tapeline, "table.zip", table);
  await expect(desk.getByText(`A reference table by “${publisher}”`)).toBeVisible();
  await expect(desk.getByText("4,213 results from at least 61 halls, Q1 2026 to Q3 2026")).toBeVisible();
  await expect(desk.getByRole("heading", { name: "You don't know this key yet" })).toBeVisible();
  await expect(desk.getByText(shortKey(publicKeyOf(key)))).toBeVisible();
  await expectForEverybody(desk);
  // Enter alone does not say that a new key is right.
  await expect(desk.getByRole("button", { name: "Don't add" })).toBeFocused();
  await desk.keyboard.press("Shift+Tab");
  await expect(desk.getByRole("button", { name: "The key is right: add this table" })).toBeFocused();
  await desk.keyboard.press("Enter");
  await expect(kept).toContainText("4,213");
  await expect(keyOfThem).toContainText(publisher);
  await expectForEverybody(desk);

  await openAthlete(desk);
  // The worst of 22 push-ups that may well have been is 17.9: surely above the 80th percentile. Wilson of 720 in 900 begins
  // at 0.7726, worked out apart.
  await expect(desk.getByText("Better than at least 77 in every 100")).toBeVisible();
  const among = "among 4,213 results from 61 halls (table of Harbour league office)";
  await expect(desk.getByText(among)).toContainText("aged 35 to 39");
  await goTo(desk, "/cards/current/athlete-1");
  const onCard = "among 4,213 aged 35 to 39 from 61 halls";
  await expect(desk.getByText(`Better than at least 77 in every 100, ${onCard}`)).toBeVisible();
  await expectForEverybody(desk);
  const board = await tapeline.openBoard();
  await expect(board.getByRole("banner")).toContainText("1 test done");
  await expect(board.locator("body")).not.toContainText(/Harbour|in every 100|halls/);

  await goTo(desk, "/reference");
  await choose(tapeline, "again.zip", table);
  await expect(desk.getByText(`You already have this table of “${publisher}”`)).toBeVisible();
  await desk.getByRole("button", { name: "Close" }).click();
  const later = { ...dates, publisher, groups: [{ ...women, marks: 4500 }], bundles: ["c".repeat(64)] };
  await choose(tapeline, "other-key.zip", tableOf(later, otherKey));
  const alert = desk.getByRole("alert");
  await expect(alert).toContainText("is signed with another key");
  await expect(alert).toContainText(shortKey(publicKeyOf(otherKey)).replaceAll(" ", "\u00a0"));
  await expect(alert).toContainText("Nothing was added.");
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Choose another file" }).click();
  await choose(tapeline, "later.zip", tableOf(later, key));
  await expect(desk.getByRole("heading", { name: /^Signed with the key that you know since/ })).toBeVisible();
  await expect(desk.getByText(/^It takes the place of the one that you have from them/)).toBeVisible();
  await expect(desk.getByRole("button", { name: "Add this table" })).toBeFocused();
  await desk.keyboard.press("Enter");
  await expect(kept).toContainText("4,500");
  await expect(kept.getByRole("row")).toHaveCount(2);

  await desk.getByRole("button", { name: `Remove the table of ${publisher}` }).click();
  await desk.getByRole("alertdialog").getByRole("button", { name: "Remove it" }).click();
  await expect(desk.getByText("Nothing from elsewhere yet")).toBeVisible();
  await expect(keyOfThem).toContainText("no table of theirs now");
  await desk.getByRole("button", { name: `Forget the key of ${publisher}` }).click();
  await expect(desk.getByRole("alertdialog")).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("alertdialog").getByRole("button", { name: "Forget it" }).click();
  await expect(keyOfThem).toHaveCount(0);
  await openAthlete(desk);
  await expect(desk.getByText("Not enough to compare").first()).toBeVisible();
});
