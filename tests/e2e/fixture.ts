import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test as base } from "@playwright/test";
import { prepareStage, type Stage } from "./launch.ts";
import { startSession, type Tapeline } from "./session.ts";

/** `tapeline` is started for each test that names it and always closed; a failed test keeps trace and pictures. */
export const test = base.extend<{ tapeline: Tapeline }, { stage: Stage }>({
  stage: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
    async ({}, use) => {
      const stage = await prepareStage();
      await use(stage);
      await stage.display.stop();
    },
    { scope: "worker", timeout: 600_000 },
  ],
  tapeline: async ({ stage }, use, info) => {
    const folder = await mkdtemp(join(tmpdir(), "tapeline-e2e-"));
    const session = await startSession(stage, folder);
    try {
      await use(session.tapeline);
    } finally {
      await session.end(info.status !== info.expectedStatus);
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    }
  },
});
