import type { TestCode } from "../../electron/domain/tests/registry.ts";

/** Outlines in a 48 × 48 box; each is the plainest figure that is not one of the other four. */
export const outlines: Readonly<Record<TestCode, string>> = Object.freeze({
  "push-up": "M4 4h40v40H4z",
  agility: "M12 2h24v10h10v24H36v10H12V36H2V12h10z",
  vertical: "M24 1 47.5 45H.5z",
  core: "M24 0 48 24 24 48 0 24z",
  endurance: "M24 1a23 23 0 1 0 0 46a23 23 0 1 0 0-46z",
});
