import { defineConfig } from "@playwright/test";

/** The built app in a real window. Run `npm run build` first; the `e2e` script does. */
export default defineConfig({
  testDir: "e2e",
  testMatch: "**/*.spec.ts",
  outputDir: "../test-results",
  timeout: 60_000,
  // Each test has its own app with its own data, and most of its time it waits for a clock: two at once are as many as
  // a small machine shows smoothly.
  workers: 2,
  fullyParallel: false,
  retries: 0,
  forbidOnly: true,
  reporter: [["list"]],
});
