import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { agilityTool } from "./agility/tool.tsx";
import { circuitTool } from "./circuit/tool.tsx";
import { coreTool } from "./core/tool.tsx";
import { leapTool } from "./leap/tool.tsx";
import { pushUpTool } from "./push-up/tool.tsx";
import type { LiveTool } from "./tool.ts";

/** How each test is run live. */
export const tools: { readonly [Test in TestCode]: LiveTool<Test> } = {
  "push-up": pushUpTool,
  agility: agilityTool,
  vertical: leapTool,
  core: coreTool,
  endurance: circuitTool,
};

/** The tool of a test whose code is not known to the compiler. */
export function toolOf(test: TestCode): LiveTool<TestCode> {
  return tools[test] as unknown as LiveTool<TestCode>;
}
