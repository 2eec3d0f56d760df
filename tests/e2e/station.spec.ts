import { expect } from "@playwright/test";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import { field, key, openStation } from "./paper.ts";

test("a station is keyed with the keyboard alone: bib, values, a question, a slip, the next bib", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await key(desk, ["Bib", "93"]);
  await expect(desk.getByText("Nobody has bib 93 today.")).toBeVisible();
  await desk.keyboard.press("Control+A");
  await key(desk, ["Bib", "2"], ["Top beats in total", "1,5"], ["Missed reps at the end", "3"]);
  await expect(desk.getByText("Write a whole number in digits alone")).toBeVisible();
  await expect(field(desk, "Top beats in total")).toHaveValue("1,5");
  await key(desk, ["Top beats in total", "85"], ["Missed reps at the end", "3"]);
  await key(desk, ["Your initials", "mk"]);
  await expect(desk.getByText("82 reps is a lot at this tempo.")).toBeVisible();
  await desk.keyboard.press("Escape");
  await expect(field(desk, "Top beats in total")).toBeFocused();
  await expect(field(desk, "Top beats in total")).toHaveValue("85");
  await desk.keyboard.press("Control+A");
  await key(desk, ["Top beats in total", "25"], ["Missed reps at the end", "3"]);
  const result = desk.getByRole("status").filter({ hasText: "Saved" });
  await expect(result).toContainText("22 reps");
  await expect(result).toContainText("First result");
  await expect(field(desk, "Bib")).toHaveValue("");
  await expect(field(desk, "Bib")).toBeFocused();

  await desk.keyboard.press("Alt+C");
  await expect(field(desk, "Top beats in total")).toBeFocused();
  await desk.keyboard.type("24");
  await desk.keyboard.press("Tab");
  await key(desk, ["Missed reps at the end", "2"], ["Reason", "Counted one twice"]);
  await expect(desk.getByText("Cancelled: Counted one twice (MK)")).toBeVisible();
  await expect(
    desk.getByRole("listitem").filter({ hasText: "24 top beats in total, 2 missed at the end" }),
  ).toContainText("22 reps");
  await expect(field(desk, "Bib")).toBeFocused();
});

test("an answer that gets lost is asked for again, and nothing is entered twice", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 1);
  await desk.evaluate(() => {
    const send = window.fetch;
    let lost = 0;
    window.fetch = async (input, init) => {
      const answer = await send(input, init);
      const entering = String(input instanceof Request ? input.url : input).includes("station.enter");
      // The entry is taken each time; three times nobody hears of it.
      if (entering && lost < 3) {
        lost += 1;
        throw new TypeError("Failed to fetch");
      }
      return answer;
    };
  });
  await key(
    desk,
    ["Bib", "1"],
    ["Top beats in total", "20"],
    ["Missed reps at the end", "0"],
    ["Your initials", "mk"],
  );
  await expect(desk.getByRole("button", { name: "Try again" })).toBeFocused();
  await expect(field(desk, "Top beats in total")).toHaveValue("20");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("status").filter({ hasText: "Saved" })).toContainText("20 reps");
  await expect(desk.getByText("20 top beats in total, 0 missed at the end")).toHaveCount(1);
});

test("another window that was faster is heard of, and what was typed stays", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 1);
  await key(desk, ["Bib", "1"]);
  await expect(field(desk, "Top beats in total")).toBeFocused();
  const seen = { how: "tally", reps: 33, offAtEnd: 0 };
  const attempts = [{ id: "6b0d9d3e-8f3f-4a61-9d0a-0f2f0c7f5a01", seen }];
  const other = { athleteId: 1, test: "push-up", variant: "full", attempts, by: "OT", sure: false };
  await callDoor(desk, "station.enter", other);
  await key(desk, ["Top beats in total", "21"], ["Missed reps at the end", "1"], ["Your initials", "mk"]);
  await expect(desk.getByRole("alert")).toContainText("A push-up result is already entered (by OT).");
  await expect(field(desk, "Top beats in total")).toHaveValue("21");
});

test("paper of a later test is entered first, and nobody has to skip", async ({ tapeline: { desk } }) => {
  await openStation(desk, "agility", 1);
  await key(desk, ["Bib", "1"]);
  await expect(desk.getByText(/^Not done yet: /)).toBeVisible();
  await key(
    desk,
    ["Full laps", "7"],
    ["Extra quadrants", "3"],
    ["Line touches", "2"],
    ["Your initials", "or"],
  );
  await expect(desk.getByText("counter-clockwise still to come").first()).toBeVisible();
  // The same athlete turns round: the bib stands there already.
  await expect(field(desk, "Bib")).toHaveValue("1");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("radio", { name: "Counter-clockwise" })).toBeChecked();
  await key(desk, ["Full laps", "7"], ["Extra quadrants", "1"], ["Line touches", "0"]);
  // (31 − 1 + 29) / 2 = 29.5
  await expect(desk.getByRole("status").filter({ hasText: "Saved" })).toContainText("29.5 landings");
});
