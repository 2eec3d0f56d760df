import { expect, type Page } from "@playwright/test";
import { gather, goToLive, laneOf, openLive, setLanes, startedAgo } from "../e2e/live.ts";
import { callDoor } from "../e2e/page.ts";
import { goToPaper, key } from "../e2e/paper.ts";
import type { Studio } from "./app.ts";
import { takeBoardAt } from "./board.ts";
import { go, sayInitials, take, takeOnScreens } from "./take.ts";

/** As many as a station has at most: fewer ask for less room. */
const lanes = 8;

/** What the stations ask back: eight lanes in doubt, and a typed result. Then the same in Spanish, and the day's end. */
export async function takeAsked({ desk, board }: Studio): Promise<void> {
  await openLive(desk, "endurance", 12);
  await setLanes(desk, lanes);
  await gather(desk, { press: (name) => desk.keyboard.press(name), pressed: () => 0 }, lanes);
  await startedAgo(desk, "endurance", 70);
  await endQuickly(desk);
  await takeOnScreens(desk, "asked-lanes");
  await laneOf(desk, 1)
    .getByRole("button", { name: /^No, change it/ })
    .click();
  await desk.getByRole("dialog").waitFor();
  await takeOnScreens(desk, "asked-lanes-correct");
  await desk.keyboard.press("Escape");
  await laneOf(desk, 1)
    .getByRole("button", { name: /^Yes, it is right/ })
    .click();
  await laneOf(desk, 1)
    .getByRole("button", { name: /^Yes, it is right/ })
    .waitFor({ state: "hidden" });
  await take(desk, "asked-lanes-answered");
  await takeTyped(desk);
  await go(desk, "/day");
  await takeOnScreens(desk, "asked-day");
  const wall = await board();
  await takeBoardAt(wall, "asked-board-first", [1920, 1080]);
  await inSpanish(desk);
  await takeBoardAt(wall, "spanish-board-first", [1920, 1080]);
  await callDoor(desk, "day.close", { dayId: 1 });
  await wall.getByText("¡Muchas gracias!", { exact: false }).first().waitFor();
  await takeBoardAt(wall, "spanish-board-closed", [1920, 1080]);
  await callDoor(desk, "language.choose", { language: "en" });
  await wall.getByText("Thank you", { exact: false }).first().waitFor();
  await takeBoardAt(wall, "closed-board", [1920, 1080]);
}

/** Three rounds of everybody within seconds: fast enough to be asked about. */
async function endQuickly(desk: Page): Promise<void> {
  for (let round = 0; round < 3; round += 1) {
    for (let lane = 1; lane <= lanes; lane += 1) await desk.keyboard.press(`${lane}`);
    // A lane's second tap within two seconds is the same one.
    await desk.waitForTimeout(2_300);
  }
  await laneOf(desk, lanes)
    .getByRole("button", { name: /^Yes, it is right/ })
    .waitFor();
}

/** A typed result that is asked about, and one with minutes or seconds. */
async function takeTyped(desk: Page): Promise<void> {
  await goToPaper(desk, "endurance");
  await key(desk, ["Bib", "9"], ["Time", "145"]);
  await desk.getByRole("alert").waitFor();
  await takeOnScreens(desk, "asked-time");
  await desk.keyboard.press("Escape");
  await desk.keyboard.press("Alt+L");
}

async function inSpanish(desk: Page): Promise<void> {
  await callDoor(desk, "language.choose", { language: "es" });
  await expect(desk.locator("html")).toHaveAttribute("lang", "es");
  await goToLive(desk, "endurance");
  await takeOnScreens(desk, "spanish-lanes");
  await go(desk, "/check-in");
  await desk.keyboard.press("Alt+n");
  await takeOnScreens(desk, "spanish-check-in");
  await go(desk, "/papers");
  await takeOnScreens(desk, "spanish-papers");
  await go(desk, "/sheets");
  await take(desk, "spanish-sheets");
  await go(desk, "/rehearsal");
  await take(desk, "spanish-rehearsal");
  await go(desk, "/day");
  await take(desk, "spanish-day");
}

const spring = `league,name,number,birth_year
Lantern Bay,Anvil Sparrow,7,1990
Lantern Bay,Brine Kestrel,12,1995
Lantern Bay,Cinder Plover of the Everlasting Overlap,30,1991
`;
const autumn = `league,name,number,birth_year
Lantern Bay Roller Derby,Nova Pike,7,1999
Lantern Bay Roller Derby,Brine Kestrel,21,1995
Lantern Bay Roller Derby,Dusk Heron,4,1988
`;

/** Who is who of a sheet, two records made one, and what was imported: all are asked before they are done. */
export async function takeWhoIsWho({ desk, offer }: Studio): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await desk.reload();
  const bring = async (name: string, content: string) => {
    await go(desk, "/day");
    await go(desk, "/sheets");
    await offer(name, content);
    await desk.getByRole("button", { name: /^Choose a file/ }).click();
    await desk.getByRole("heading", { name }).waitFor();
  };
  await bring("spring.csv", spring);
  await desk.getByRole("button", { name: /^Import 3 rows/ }).click();
  await desk.getByRole("heading", { name: "3 rows imported" }).waitFor();
  await bring("autumn.csv", autumn);
  await takeOnScreens(desk, "asked-league");
  await desk.getByRole("button", { name: "Same league: Lantern Bay" }).click();
  await desk.getByRole("button", { name: "Another person, new here" }).first().waitFor();
  await takeOnScreens(desk, "asked-who");
  await callDoor(desk, "language.choose", { language: "es" });
  await expect(desk.locator("html")).toHaveAttribute("lang", "es");
  await takeOnScreens(desk, "spanish-who");
  await callDoor(desk, "language.choose", { language: "en" });
  await desk.getByRole("button", { name: "Another person, new here" }).first().click();
  await desk.getByRole("button", { name: /^Same person: Brine Kestrel/ }).click();
  await take(desk, "asked-who-answered");
  await desk.getByRole("button", { name: /^Import 3 rows/ }).click();
  await desk.getByRole("heading", { name: /^3 rows/ }).waitFor();
  await takeOnScreens(desk, "asked-imports");
  await desk.getByRole("button", { name: /^Undo: Roster, autumn\.csv/ }).click();
  await desk.getByRole("button", { name: "Undo it" }).waitFor();
  await take(desk, "asked-undo-import");
  await desk.keyboard.press("Escape");
  await takeJoin(desk);
}

async function takeJoin(desk: Page): Promise<void> {
  await go(desk, "/athletes");
  await desk.getByRole("link", { name: "Anvil Sparrow" }).click();
  await desk.getByRole("button", { name: "Make two records one" }).click();
  await desk.getByRole("searchbox", { name: "Find the other record" }).fill("Cinder");
  await desk.getByRole("button", { name: /^Cinder Plover/ }).waitFor();
  await takeOnScreens(desk, "asked-join-search");
  await desk.getByRole("button", { name: /^Cinder Plover/ }).click();
  await desk.getByRole("button", { name: "Make them one" }).waitFor();
  await takeOnScreens(desk, "asked-join");
  await callDoor(desk, "language.choose", { language: "es" });
  await expect(desk.locator("html")).toHaveAttribute("lang", "es");
  await takeOnScreens(desk, "spanish-join");
  await callDoor(desk, "language.choose", { language: "en" });
  await desk.getByRole("button", { name: "Make them one" }).click();
  await sayInitials(desk);
  await desk.getByText("The two records are one.").waitFor();
  await take(desk, "asked-joined");
  await go(desk, "/athletes");
  await takeOnScreens(desk, "asked-changes");
  await desk.getByRole("combobox", { name: "League" }).selectOption("Lantern Bay");
  await desk.getByRole("button", { name: "Rename or merge this league" }).click();
  await desk.getByRole("dialog").or(desk.getByRole("alertdialog")).waitFor();
  await take(desk, "asked-league-change");
}
