import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { agilityTool } from "./agility/tool.tsx";
import { coreTool } from "./core/tool.tsx";
import { enduranceTool } from "./endurance/tool.tsx";
import type { LiveTool } from "./live/tool.ts";
import { pushUpTool } from "./push-up/tool.tsx";
import { verticalTool } from "./vertical/tool.tsx";

/** The live run of each test; beside the faces, since pages of paper and the page for everybody run none. */
const tools: { readonly [Code in TestCode]: LiveTool<Code> } = {
  "push-up": pushUpTool,
  agility: agilityTool,
  vertical: verticalTool,
  core: coreTool,
  endurance: enduranceTool,
};

/** Returns the live run of a test whose code is known only at run time. */
export function toolOf(test: TestCode): LiveTool<TestCode> {
  return tools[test] as unknown as LiveTool<TestCode>;
}
