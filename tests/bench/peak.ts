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
export const tellingPeak = ["--import", `data:text/javascript,${encodeURIComponent(watch)}`] as const;
