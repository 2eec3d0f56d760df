import { expect } from "@playwright/test";
import { test } from "./fixture.ts";
import { goTo } from "./page.ts";
import { field, key, openStation } from "./paper.ts";

test("a pile of paper is entered as done earlier: nobody rests from the moment it is typed, and a time on it counts", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await desk.getByText("From paper, done earlier").click();
  await field(desk, "Bib").click();
  await key(desk, ["Bib", "1"]);
  const doneAt = field(desk, "Done at, if on the paper");
  await doneAt.fill("ten past");
  await field(desk, "Top beats in total").focus();
  await key(desk, ["Top beats in total", "20"], ["Missed reps at the end", "0"]);
  await expect(desk.getByText("Write the time of day as 14:05, or leave it empty.")).toBeVisible();
  await doneAt.fill("");
  await field(desk, "Missed reps at the end").press("Enter");
  await key(desk, ["Your initials", "mk"]);
  await expect(desk.getByRole("status").filter({ hasText: "Saved" })).toContainText("20 reps");
  // The next one of the pile; then one who has just done it.
  await key(desk, ["Bib", "2"]);
  await expect(doneAt).toHaveValue("");
  await key(desk, ["Top beats in total", "22"], ["Missed reps at the end", "0"]);
  await expect(desk.getByRole("status").filter({ hasText: "Saved" })).toContainText("22 reps");
  await desk.getByText("From paper, done earlier").click();
  await field(desk, "Bib").click();
  await key(desk, ["Bib", "3"], ["Top beats in total", "24"], ["Missed reps at the end", "0"]);
  await expect(desk.getByRole("status").filter({ hasText: "Saved" })).toContainText("24 reps");
  await goTo(desk, "Agility");
  await expect(desk.getByText(/[Rr]est(?:ing|s)? until/)).toHaveCount(1);
});
