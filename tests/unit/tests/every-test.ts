import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { agilityExamples } from "./agility/examples.ts";
import { coreExamples } from "./core/examples.ts";
import { enduranceExamples } from "./endurance/examples.ts";
import type { Examples } from "./examples.ts";
import { pushUpExamples } from "./push-up/examples.ts";
import { verticalExamples } from "./vertical/examples.ts";

/** What tests of all tests try each with. */
export const examplesOf: Readonly<Record<TestCode, Examples>> = {
  "push-up": pushUpExamples,
  agility: agilityExamples,
  vertical: verticalExamples,
  core: coreExamples,
  endurance: enduranceExamples,
};
