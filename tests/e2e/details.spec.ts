import { expect, type Page } from "@playwright/test";
import { test as alone } from "./fixture.ts";
import { notInSight, showOn } from "./in-sight.ts";
import { openLive, startedAgo } from "./live.ts";
import { callDoor } from "./page.ts";
import { openSharedDay, test } from "./shared.ts";

const outcome = { leaveOut: [], board: "name", share: true, guardianConsent: true, by: "QA" } as const;

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

test("the shade of a dialog covers the whole window", async ({ tapeline: { desk } }) => {
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  await goTo(desk, "/day");
  await desk.getByRole("button", { name: "Close the day" }).click();
  await expect(desk.getByRole("alertdialog")).toBeVisible();
  const uncovered = await desk.evaluate(() => {
    const [right, bottom] = [innerWidth - 1, innerHeight - 1];
    const corners = [
      [0, 0],
      [right, 0],
      [right, bottom / 2],
      [right, bottom],
      [0, bottom],
    ] as const;
    const dialog = document.querySelector("[role=alertdialog]");
    // The shade is around the dialog: nothing else is hit outside it.
    return corners.filter(([x, y]) => document.elementFromPoint(x, y)?.contains(dialog) !== true);
  });
  expect(uncovered).toEqual([]);
  expect(await desk.evaluate(() => innerWidth - document.documentElement.clientWidth)).toBe(0);
});

alone(
  "the rules over a live station stay within a small window and have a button to close them",
  async ({ tapeline: { desk } }) => {
    await openLive(desk, "endurance", 1);
    await showOn(desk, { width: 819, height: 614, scale: 1.25 });
    await desk.keyboard.press("Alt+r");
    const dialog = desk.getByRole("dialog");
    await expect(dialog).toBeVisible();
    const all = "[role=dialog], [role=dialog] h2, [role=dialog] button";
    await expect.poll(() => notInSight(desk, all)).toEqual([]);
    await dialog.getByRole("button", { name: "Close" }).click();
    await expect(dialog).toBeHidden();
  },
);

test("“See backups” leads to the backups", async ({ tapeline: { desk } }) => {
  await openSharedDay(desk);
  await desk.reload();
  await goTo(desk, "/day");
  await desk.getByRole("link", { name: "See backups" }).click();
  await expect(desk.getByRole("heading", { name: "Backups" })).toBeInViewport({ ratio: 1 });
  await expect(desk.getByRole("button", { name: "Back up now" })).toBeInViewport({ ratio: 1 });
});

alone(
  "a name from right to left stands before its number and bib in the list of cards",
  async ({ tapeline: { desk } }) => {
    await openSharedDay(desk);
    const who = { league: "North Quay", name: "רוני רעם", number: "8", birthYear: 1990, bib: 4 };
    const { athleteId } = (await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome })) as {
      athleteId: number;
    };
    const attempts = (["cw", "ccw"] as const).map((direction) => ({
      id: crypto.randomUUID(),
      seen: { direction, laps: 7, extra: 1, touches: 0 },
    }));
    const entry = { athleteId, test: "agility", variant: "", attempts, by: "QA", sure: true };
    await callDoor(desk, "station.enter", entry);
    await desk.reload();
    await goTo(desk, "/cards");
    const link = desk.getByRole("link", { name: /bib 4$/i });
    await expect(link).toHaveText("רוני רעם, 8, bib 4");
    const right = (text: string) =>
      link.evaluate((element, part) => {
        const texts = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
        while (texts.nextNode()) {
          const at = texts.currentNode.textContent?.indexOf(part) ?? -1;
          if (at < 0) continue;
          const range = document.createRange();
          range.setStart(texts.currentNode, at);
          range.setEnd(texts.currentNode, at + part.length);
          return range.getBoundingClientRect().right;
        }
        return Number.NaN;
      }, text);
    expect(await right("רוני")).toBeLessThan(await right("8"));
    expect(await right("8")).toBeLessThan(await right("bib 4"));
  },
);

test("the words under a chart do not run into each other", async ({ tapeline: { desk } }) => {
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  await goTo(desk, "/athletes");
  await desk.getByRole("link", { name: "Chimney Comet" }).click();
  await expect(desk.locator("svg[class*=plot]").first()).toBeVisible();
  for (const width of [819, 1024, 1280]) {
    await showOn(desk, { width, height: 700, scale: 1 });
    const tooNear = await desk.evaluate(() =>
      [...document.querySelectorAll("svg[class*=plot]")].flatMap((chart) => {
        const words = [...chart.querySelectorAll("[class*=dates] text, text[class*=dates]")]
          .map((text) => ({ text: text.textContent, box: text.getBoundingClientRect() }))
          .toSorted((a, b) => a.box.left - b.box.left);
        if (words.length < 2) return [`only ${words.length} words`];
        return words.flatMap(({ text, box }, index) => {
          const next = words[index + 1];
          return next !== undefined && next.box.left - box.right < 8 ? [`${text}${next.text}`] : [];
        });
      }),
    );
    expect.soft(tooNear, `${width}`).toEqual([]);
  }
});

alone("a keycap stays within its button in Spanish", async ({ tapeline: { desk } }) => {
  await callDoor(desk, "language.choose", { language: "es" });
  await desk.reload();
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Jornada" });
  await callDoor(desk, "day.open", { sure: true });
  for (let bib = 1; bib <= 4; bib += 1) {
    const who = { league: "North Quay", name: `Skater ${bib}`, number: `${bib}`, birthYear: 1990, bib };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  }
  await desk.reload();
  await goTo(desk, "/station/push-up");
  await expect(desk.locator('[data-whole-window] [data-test="push-up"]').first()).toBeVisible();
  await expect(desk.getByText("Skater 4").first()).toBeVisible();
  await desk.keyboard.press("n");
  await desk.getByRole("dialog").getByRole("textbox").fill("QA");
  await desk.keyboard.press("Enter");
  await expect(desk.locator("[data-whole-window] [data-taken]")).toHaveCount(4);
  await startedAgo(desk, "push-up", 9);
  const over = await desk.evaluate(() =>
    [...document.querySelectorAll("[data-lane] button kbd")].flatMap((key) => {
      const cap = key.getBoundingClientRect();
      const button = key.closest("button")?.getBoundingClientRect();
      const isOver = button !== undefined && (cap.left < button.left + 2 || cap.right > button.right - 2);
      return isOver ? [key.textContent] : [];
    }),
  );
  expect(over).toEqual([]);
});
