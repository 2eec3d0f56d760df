import { defineConfig } from "@playwright/test";

/** The built app in a real window. Run `npm run build` first; the `e2e` script does. */
export default defineConfig({
  testDir: "e2e",
  globalSetup: "./e2e/prepare.ts",
  testMatch: "**/*.spec.ts",
  outputDir: "../test-results",
  timeout: 60_000,
  // A small machine that shows two windows at once may take its time; what is waited for has to come all the same.
  expect: { timeout: 15_000 },
  // Each test has its own app with its own data, and most of its time it waits for a clock: three at once are as many as
  // a small machine shows smoothly.
  workers: 3,
  fullyParallel: false,
  // The machine may be busy with something else for a while; whatever needs the second try is told as flaky.
  retries: 1,
  forbidOnly: true,
  reporter: [["list"]],
});
