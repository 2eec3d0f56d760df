import type { TestCode } from "../../../../electron/domain/protocols/protocol.ts";
import { agilityTool } from "./agility/tool.tsx";
import { circuitTool } from "./circuit/tool.tsx";
import type { LiveTool } from "./tool.ts";

/** How each test is run live. The leap (`leap/tool.tsx`) joins when typed reaches no longer land in the bib's scanner. */
export const tools: { readonly [Test in TestCode]?: LiveTool<Test> } = {
  agility: agilityTool,
  endurance: circuitTool,
};

/** Whether a test can be run live. */
export function isLive(test: TestCode): boolean {
  return tools[test] !== undefined;
}

/** The tool of a test whose code is not known to the compiler. */
export function toolOf(test: TestCode): LiveTool<TestCode> | null {
  return (tools[test] as LiveTool<TestCode> | undefined) ?? null;
}
