import { join } from "node:path";
import { expect } from "@playwright/test";
import { boardDay } from "../door/board-day.ts";
import { ticket } from "../door/station-day.ts";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { callDoor, goTo } from "./page.ts";

const people = ["Ash Velvet", "Briar Knox", "Cinder Rue"].map((name) => ({ league: "Foundry Town", name }));

test("each test says what its noise is assumed to be, and learns from the day's pairs when it is closed while one looks", async ({
  tapeline,
}) => {
  let ids: readonly number[] = [];
  let dayId = 0;
  await tapeline.restart(async () => {
    const day = await boardDay(people, join(tapeline.folder, "tapeline.sqlite"));
    ids = day.ids;
    dayId = day.dayId;
    for (const bib of [1, 2, 3]) day.past(bib, "push-up", 20, "2026-11-07");
    await day.enter(1, "push-up", { how: "tally", reps: 21, offAtEnd: 0 });
    day.desk.close();
  });
  const { desk } = tapeline;
  await goTo(desk, "Athletes");
  await desk.getByRole("link", { name: "How much is normal variation?" }).click();
  await expect(desk.getByRole("heading", { name: "How much is normal variation?" })).toBeVisible();
  const pushUps = desk.getByRole("listitem", { name: "Cadence push-up" });
  await expect(pushUps).toContainText("An assumption");
  await expect(pushUps).toContainText("our own assumption, no published source");
  await expect(pushUps).toContainText("clear gain");
  // The tape draws 20 and 27; what is told of it must be the same 7.
  await expect(pushUps).toContainText("a gain is called clear from 7 reps on");
  await expect(desk.getByRole("listitem", { name: "Vertical leap" })).toContainText(
    "Markovic and others, 2004",
  );
  await expectForEverybody(desk);

  // Differences of 1 and 5: SD 2.83, a typical error of 2, about.
  const attempts = [ticket({ how: "tally", reps: 25, offAtEnd: 0 })];
  const entry = { athleteId: ids[1], test: "push-up", variant: "full", attempts, by: "QA", sure: true };
  await callDoor(desk, "station.enter", entry);
  await expect(desk.getByText("What today's results teach comes in when the day is closed.")).toBeVisible();
  await expect(pushUps).toContainText("An assumption");
  await callDoor(desk, "day.close", { dayId });
  await expect(pushUps).toContainText("Starting value and 2 pairs");
  await expect(pushUps).toContainText(
    /Your own pairs alone give [12](?:\.\d)? reps; the true figure may lie anywhere between 0\.\d and 6\d\.\d/,
  );
});
