import { readFileSync } from "node:fs";

/**
 * Words for a Node whose program tells the peak of its resident memory at the end, in KB, on stream 3. By the system's own
 * record of the program where there is one: the usual figure counts what the process that started it held.
 */
const watch = `import { existsSync, readFileSync, writeSync } from "node:fs";
const own = "/proc/self/status";
process.on("exit", () => {
  const told = existsSync(own) ? /VmHWM:\\s+(\\d+)/.exec(readFileSync(own, "utf8"))?.[1] : undefined;
  writeSync(3, told ?? String(process.resourceUsage().maxRSS));
});`;
const tellingPeak = ["--import", `data:text/javascript,${encodeURIComponent(watch)}`] as const;

const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts: { table: string } };
/** What `npm run table` gives to Node itself. */
const flags = scripts.table.split(" ").filter((word) => word.startsWith("--"));
const script = new URL("../../electron/merge-references.ts", import.meta.url).pathname;

/** The words for Node with which the command runs as npm starts it, and tells its peak. */
export const mergeCommand = [...tellingPeak, ...flags, script];
