import type { Page } from "@playwright/test";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { go, takeOnScreens, takeWhole } from "./take.ts";

/** The desk's places by the names of their pictures. */
const places = [
  ["day", "/day"],
  ["sheets", "/sheets"],
  ["check-in", "/check-in"],
  ...testCodes.map((test) => [`station-${test}`, `/station/${test}`] as const),
  ["athletes", "/athletes"],
  ["bundle", "/bundle"],
] as const;

/** What is reached from the day. */
const beside = [
  ["noise", "/noise"],
  ["study", "/study"],
  ["plan", "/plan"],
  ["summary", "/summary"],
  ["cards", "/cards"],
  ["papers", "/papers"],
  ["instructions", "/instructions"],
  ["join-a-table", "/join"],
] as const;

export async function takePlaces(desk: Page, prefix: string): Promise<void> {
  for (const [name, path] of places) {
    await go(desk, path);
    await takeOnScreens(desk, `${prefix}-${name}`);
  }
}

export async function takeBeside(desk: Page, prefix: string): Promise<void> {
  for (const [name, path] of beside) {
    await go(desk, path);
    await takeWhole(desk, `${prefix}-${name}`);
  }
}
