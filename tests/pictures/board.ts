import type { Page } from "@playwright/test";
import { callDoor } from "../e2e/page.ts";
import { resize, type Size, take } from "./take.ts";

/** One picture of the board as it stands at that size. */
export async function takeBoardAt(board: Page, name: string, size: Size): Promise<void> {
  await resize(board, size);
  await board.waitForFunction(() => document.documentElement.dataset.ready === "true");
  await take(board, name);
}

/** Every scene of the board at that size, from the first, in as many turns as there are. */
export async function takeScenes(board: Page, prefix: string, size: Size): Promise<void> {
  await resize(board, size);
  await board.reload();
  await board.getByRole("heading", { level: 1 }).waitFor();
  const shown = new Set<string>();
  for (let scene = 1; scene <= 6; scene += 1) {
    const text = (await board.getByRole("main").textContent()) ?? "";
    if (shown.has(text)) break;
    shown.add(text);
    await take(board, `${prefix}-${scene}`);
    await board.clock.fastForward(15_000);
  }
}

/** Nobody in the hall sees anything: dark, and as good as off. */
export async function takeHidden(desk: Page, board: Page, name: string): Promise<void> {
  await callDoor(desk, "board.hide", { hidden: true });
  await board.getByRole("img", { name: "The big screen is hidden" }).waitFor();
  await take(board, name);
  await callDoor(desk, "board.hide", { hidden: false });
}
