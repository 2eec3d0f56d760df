import { defineConfig } from "vitest/config";

/** Everything below the window: pure rules, outside values, the store on real files, the door. */
export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/{unit,store,checks,door,faults}/**/*.test.ts"],
    testTimeout: 20_000,
  },
});
