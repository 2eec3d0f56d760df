import { expect, type Locator, type Page } from "@playwright/test";

/** WCAG 2.2 asks for 24 CSS px (2.5.8); cold fingers for more. */
const leastPx = 44;

/** Puts a finger on something and takes it off again, after it was brought into sight; it has to be large enough. */
export async function tap(page: Page, target: Locator): Promise<void> {
  const tools = await page.context().newCDPSession(page);
  // Before anything is measured: for fingers alone the screens leave out what only keys have use for.
  await tools.send("Emulation.setTouchEmulationEnabled", { enabled: true, maxTouchPoints: 5 });
  await target.scrollIntoViewIfNeeded();
  // A person looks before pressing; what came under a finger only just now is not pressed (`useStillness`).
  await new Promise((looked) => setTimeout(looked, 600));
  // What is tapped is the label where it belongs to a control that nobody sees.
  const box = await target.evaluate((element) => {
    const shown = element.closest("label, button, a, [role=option]") ?? element;
    const { x, y, width, height } = shown.getBoundingClientRect();
    return { x, y, width, height };
  });
  const name = (await target.textContent()) || (await target.getAttribute("aria-label")) || "a field";
  expect
    .soft(Math.min(box.width, box.height), `${name.trim()} is large enough for a finger`)
    .toBeGreaterThanOrEqual(leastPx);
  const point = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await tools.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [point] });
  await tools.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await tools.detach();
}

/** Taps a field and writes into it as the system's touch keyboard does: text comes, no key is pressed. */
export async function write(page: Page, field: Locator, text: string): Promise<void> {
  await tap(page, field);
  await expect(field).toBeFocused();
  await page.keyboard.insertText(text);
}
