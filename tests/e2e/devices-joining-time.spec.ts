import { expect } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { test } from "./devices.ts";
import { letIn, openDemoTable, readCode } from "./joining.ts";

/**
 * A person's pace in ms: to think before a step, to point at something, to press a key as an average typist does.
 * Source: the keystroke-level model of Card, Moran and Newell, Communications of the ACM 23 (1980), from memory. It was
 * measured at a desk: thumbs on a phone may be slower.
 */
const pace = { think: 1_350, point: 1_100, key: 280 };
/** The camera finds the code and its link is opened: common practice, no source. */
const scanMs = 5_000;
/** The browser's warning: its details, and on to the address. The test's browser has accepted it. */
const warning = { taps: 2, ms: 2 * (pace.think + pace.point) };
/** The bar of the design for a phone, in ms, and what of it is left to the network, the machines and asking each second. */
const [barMs, machineMs] = [30_000, 4_000];

test("a phone joins by few enough taps and keys for 30 seconds at a person's pace, the organiser's yes among them", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context } = await openDevice(chromium, 360, 640, { isMobile: true });
  const code = (await readCode(desk)).replace(" ", "");
  let taps = warning.taps;
  let personMs = scanMs + warning.ms;
  const tapped = (count: number) => {
    taps += count;
    personMs += count * (pace.think + pace.point);
  };
  const began = performance.now();
  await page.goto(`${url}#${code}`);
  await page.getByLabel("Name of this device").tap();
  tapped(1);
  const name = "Red phone";
  await page.keyboard.type(name);
  personMs += name.length * pace.key;
  await page.getByRole("button", { name: "Ask to join" }).tap();
  tapped(1);
  await desk.getByRole("button", { name: "Let it in" }).waitFor();
  // The organiser opens the list, chooses, and lets it in.
  await letIn(desk, name, "Core");
  tapped(3);
  await expect(page.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  const ownMs = performance.now() - began;
  const told = `${taps} taps; a person's part ${personMs / 1_000} s, the machines' ${Math.round(ownMs)} ms`;
  test.info().annotations.push({ type: "joining", description: told });
  expect(taps, told).toBeLessThan(8);
  // How fast the machine is decides nothing here: only what people have to do.
  expect(personMs + machineMs, told).toBeLessThan(barMs);
  await context.close();
});
