import { expect } from "@playwright/test";
import { test } from "./fixture.ts";

test("the demonstration opens as a day that is being held, says that it is invented, and can be left", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await desk.getByRole("button", { name: "Open the demo" }).click();
  await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
  await expect(desk.getByText("Demo: made-up data")).toBeVisible();
  await expect(desk.getByText("49", { exact: true })).toBeVisible();
  const board = await tapeline.openBoard();
  await expect(board.getByText("Demo", { exact: true })).toBeVisible();

  await desk.getByRole("link", { name: "Check-in" }).click();
  await expect(desk.getByText("Demo: made-up data")).toBeVisible();
  await desk.getByRole("button", { name: "Leave the demo" }).click();
  await expect(desk.getByRole("heading", { name: "New testing day" })).toBeVisible();
  await expect(desk.getByRole("status")).toContainText("Your own days are as they were");
  await expect(desk.getByText("Demo: made-up data")).toHaveCount(0);
  await expect(board.getByText("Demo", { exact: true })).toHaveCount(0);
});

test("a day of one's own can't be begun in the demonstration, and a restart comes back to the own store", async ({
  tapeline,
}) => {
  await tapeline.desk.getByRole("button", { name: "Open the demo" }).click();
  await tapeline.desk.getByRole("heading", { name: "Overview of the day" }).waitFor();
  await tapeline.desk.getByRole("link", { name: "Back to the start" }).click();
  await expect(tapeline.desk.getByText("This is the demo")).toBeVisible();
  await expect(tapeline.desk.getByRole("button", { name: "Create the day" })).toHaveCount(0);
  await tapeline.restart();
  await expect(tapeline.desk.getByRole("button", { name: "Create the day" })).toBeVisible();
  await expect(tapeline.desk.getByText("Demo: made-up data")).toHaveCount(0);
});
