import { expect } from "@playwright/test";
import { readDoor } from "./devices-kept.ts";
import { test } from "./fixture.ts";
import { countedKeys, gather, laneOf, openLive, startedAgo } from "./live.ts";
import { callDoor } from "./page.ts";
import { field, goToPaper, isInSight, key, openStation } from "./paper.ts";
import { entryOf, keyFromPaper } from "./stations.ts";

test("paper is chosen for one station alone, and a station whose heat runs opens on that heat", async ({
  tapeline: { desk },
}) => {
  const go = (code: string) =>
    desk.evaluate((path) => {
      location.hash = path;
    }, `/station/${code}`);
  const core = desk.getByRole("heading", { level: 1, name: "Staged plank" });
  await openLive(desk, "core", 2);
  await gather(desk, countedKeys(desk), 2);
  await startedAgo(desk, "core", 20);
  await goToPaper(desk, "push-up");
  await go("core");
  await expect(core).toBeVisible();
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  // Chosen for this very station, paper says that a heat runs behind it.
  await desk.keyboard.press("Alt+L");
  await expect(entryOf(desk)).toBeVisible();
  await expect(desk.getByText("A heat of this test is running here: 2 lanes.")).toBeVisible();
  await desk.getByRole("button", { name: /^Show the heat/ }).click();
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await desk.keyboard.press("Alt+L");
  await expect(entryOf(desk)).toBeVisible();
  await go("push-up");
  await expect(entryOf(desk)).toBeVisible();
  // Come back to, the heat is in front again, and its keys stop its lanes.
  await go("core");
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await desk.keyboard.press("1");
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "done");
});

test("a bib that stood in the field gives way to the next digits, once its station is come back to", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await desk.keyboard.type("2");
  await goToPaper(desk, "core");
  await goToPaper(desk, "push-up");
  await expect(field(desk, "Bib")).toHaveValue("2");
  await desk.keyboard.type("3");
  await expect(field(desk, "Bib")).toHaveValue("3");
});

test("a long queue shows its beginning and how long it is, and all of it as it changes to whoever asks", async ({
  tapeline: { desk },
}) => {
  await openLive(desk, "core", 11);
  await keyFromPaper(desk);
  const queue = desk.getByRole("region", { name: /^Waiting here/ });
  const places = queue.getByRole("listitem");
  await expect(queue.getByRole("heading")).toHaveText("Waiting here 11");
  await expect(places).toHaveCount(8);
  await queue.getByRole("button", { name: "Show 3 more" }).click();
  await expect(places).toHaveCount(11);
  // A result and a call from elsewhere are seen in all of it.
  const { queue: waiting } = (await readDoor(desk, "station.view", { test: "core" })) as {
    queue: { who: { athleteId: number } }[];
  };
  const athleteId = waiting[9]?.who.athleteId;
  await callDoor(desk, "station.callAthlete", { athleteId, test: "core" });
  await expect(places.first()).toContainText("Skater 10");
  await callDoor(desk, "station.enter", {
    ...{ athleteId, test: "core", by: "QA", sure: true },
    attempts: [{ id: crypto.randomUUID(), seen: { held: 90_000 } }],
  });
  await expect(places).toHaveCount(10);
  await expect(queue).not.toContainText("Skater 10");
  await queue.getByRole("button", { name: "Show fewer" }).click();
  await expect(places).toHaveCount(8);
  await expect(queue.getByRole("button", { name: "Show 2 more" })).toBeVisible();
});

test("somebody of whom nothing was typed gives way to the next bib, once paper is come back to", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await key(desk, ["Bib", "2"]);
  await expect(field(desk, "Top beats in total")).toBeFocused();
  await desk.keyboard.press("Alt+L");
  await desk.keyboard.press("Alt+L");
  await expect(field(desk, "Bib")).toBeFocused();
  await expect(field(desk, "Top beats in total")).toHaveCount(0);
  await key(desk, ["Bib", "3"]);
  await expect(entryOf(desk).getByText("Skater 3")).toBeVisible();
});

test("what was typed of somebody is kept, with the name, once paper is come back to", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await key(desk, ["Bib", "2"]);
  await expect(field(desk, "Top beats in total")).toBeFocused();
  await desk.keyboard.type("17");
  await desk.keyboard.press("Alt+L");
  await desk.keyboard.press("Alt+L");
  await expect(field(desk, "Top beats in total")).toHaveValue("17");
  await isInSight(entryOf(desk).getByText("Skater 2"));
});
