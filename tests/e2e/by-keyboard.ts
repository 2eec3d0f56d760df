import { expect, type Page } from "@playwright/test";

/** More stops than any screen has between two things. */
const mostStops = 80;

interface Stop {
  readonly role: string;
  readonly name: string;
  /** Whether somebody sees where the focus is: an outline, or a look that changes. */
  readonly seen: boolean;
}

/** What has the focus, as the page's own accessibility tree names it. */
async function focused(desk: Page): Promise<Stop> {
  const seen = await desk.evaluate(() => {
    const { activeElement } = document;
    if (activeElement === null || activeElement === document.body) return false;
    // The parts of a date field are the browser's own, and so is their ring.
    if (activeElement.matches("input[type=date]")) return true;
    // The ring may lie around what is seen of a hidden control.
    const around = activeElement.closest("label") ?? activeElement;
    return [activeElement, around, ...around.querySelectorAll("*")].some((element) => {
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
      return (outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2) || boxShadow !== "none";
    });
  });
  const tools = await desk.context().newCDPSession(desk);
  const { nodes } = await tools.send("Accessibility.getFullAXTree");
  await tools.detach();
  const node = nodes.findLast(({ properties }) =>
    properties?.some(({ name, value }) => name === "focused" && value.value === true),
  );
  return { role: String(node?.role?.value ?? ""), name: String(node?.name?.value ?? ""), seen };
}

/**
 * Presses Tab until a control of that name has the focus, and checks at each stop that the focus is seen.
 * @throws when a whole screen was gone through without it.
 */
export async function tabTo(desk: Page, name: RegExp): Promise<void> {
  const passed: string[] = [];
  for (let stop = 0; stop < mostStops; stop += 1) {
    await desk.keyboard.press("Tab");
    const { role, name: here, seen } = await focused(desk);
    passed.push(`${role} ${here}`);
    // A screen that has just come puts the focus on its heading, where nothing can be done: no stop of anybody's.
    const isStop = role !== "RootWebArea" && role !== "heading";
    expect(seen || !isStop, `The focus is not seen at: ${role} ${here}`).toBe(true);
    if (name.test(here)) return;
  }
  throw new Error(`Tab never comes to ${name}. It passed: ${passed.join("; ")}`);
}

/** Goes to a control by Tab and presses Enter. */
export async function enterAt(desk: Page, name: RegExp): Promise<void> {
  await tabTo(desk, name);
  await desk.keyboard.press("Enter");
}

/** Goes to a group of choices by Tab, and to one of them by the arrow keys. */
export async function choose(desk: Page, among: RegExp, choice: RegExp): Promise<void> {
  await tabTo(desk, among);
  for (let tries = 0; tries < 8; tries += 1) {
    const { name } = await focused(desk);
    if (choice.test(name)) return desk.keyboard.press("Space");
    await desk.keyboard.press("ArrowDown");
  }
  throw new Error(`The arrow keys never come to ${choice}.`);
}
