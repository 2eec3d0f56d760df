import { defineConfig } from "@playwright/test";

/**
 * Sweeps try one thing at every size, in every language, in other browsers or in real time: as long as all the rest
 * together. `npm test` leaves them out; `npm run sweeps` runs them alone, and `npm test -- whole`, as CI does, with it.
 */
const sweeps = [
  ...["access", "details", "instructions", "look", "papers", "signs", "small-screens", "zoom"],
  ...["devices-*", "joined-program", "metronome", "outside", "package", "keys-per-mark"],
].map((name) => `**/${name}.spec.ts`);
/** A day in a whole hall, with time of its own: `npm run hall`. */
const hall = "**/devices-hall.spec.ts";
/** The mark of a sweep in a file of others. */
const single = /@sweep/;

/** What waits longest. Left to itself the runner takes it last, when most workers have nothing to do any more. */
const first = ["devices", "main-job", "keyboard", "lock"].map((name) => `**/${name}.spec.ts`);

/** The built app in a real window. Run `npm run build` first; the `e2e` script does. */
export default defineConfig({
  testDir: "e2e",
  globalSetup: "./e2e/prepare.ts",
  // In this order.
  projects: [
    { name: "sweeps", testMatch: sweeps, testIgnore: hall },
    { name: "single sweeps", testIgnore: [...sweeps, hall], grep: single },
    { name: "first", testMatch: first, grepInvert: single },
    { name: "rest", testIgnore: [...sweeps, ...first], grepInvert: single },
    { name: "hall", testMatch: hall },
  ],
  outputDir: "../test-results",
  // When something is given up that never comes, and nothing else: a green run takes no longer with more of it, and what
  // is waited for has to come all the same on a small machine that does other things too.
  timeout: 300_000,
  expect: { timeout: 120_000 },
  // Each test has its own app with its own data, and most of its time it waits for a clock: three at once are as many as
  // a small machine shows smoothly.
  workers: 3,
  fullyParallel: false,
  // At load 11 the runner waited 30 s for a frame that was not drawn, in one of some 800 tests. A second try is told as flaky.
  retries: 1,
  forbidOnly: true,
  reporter: [["list"]],
});
