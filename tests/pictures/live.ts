import type { Page } from "@playwright/test";
import { callDoor } from "../e2e/page.ts";
import { openDemo, readDoor, type Studio } from "./app.ts";
import { go, sayInitials, takeAt, takeOnScreens } from "./take.ts";

/** Every live tool, gathered and under way, on the screens that stations have. */
export async function takeLive({ desk }: Studio): Promise<void> {
  await openDemo(desk);
  const started = { "push-up": 9_000, agility: 0, vertical: 0, core: 57_000, endurance: 65_000 };
  let asked = false;
  for (const [test, startedAgoMs] of Object.entries(started)) {
    await go(desk, `/station/${test}`);
    await desk.getByRole("button", { name: /^Call the next/ }).click();
    if (!asked) await sayInitials(desk);
    asked = true;
    await desk
      .getByRole("button", { name: /^(Start \d|End this heat)/ })
      .first()
      .waitFor();
    await takeOnScreens(desk, `live-${test}-gathered`);
    if (startedAgoMs > 0) await startHeat(desk, test, startedAgoMs);
    await takeOnScreens(desk, `live-${test}`);
    await takeAt(desk, [1440, 900], `live-${test}-1440`);
    await takeAt(desk, [1920, 1080], `live-${test}-1920`);
  }
}

async function startHeat(desk: Page, test: string, startedAgoMs: number): Promise<void> {
  const { heat } = await readDoor<{ heat: { heatId: string } }>(desk, "heat.view", { test });
  await callDoor(desk, "heat.start", { heatId: heat.heatId, startedAgoMs });
  await desk.getByRole("button", { name: /^End this heat/ }).waitFor();
  await desk.keyboard.press("1");
}
