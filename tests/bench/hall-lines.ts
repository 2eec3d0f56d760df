import type { HallBench, PartBench } from "./hall.ts";
import type { Percentiles } from "./hall-judge.ts";
import type { Seconds } from "./hall-processes.ts";

/** The figures of a hall for people, beside what they are held to. */
export function linesOfHall(bench: HallBench): string[] {
  const { parts, tableAlone, tableAmong, megabytes, sent, kept, lost, doubled, bars } = bench;
  const ratio = (of: "p50" | "p95") => tableAmong[of] / tableAlone[of];
  return [
    ...parts.flatMap((part) => [...linesOfPart(part, bars.paintedMs), ...costOf(part, parts)]),
    `the table's own station, Enter to saved: ${written(tableAmong)} among the devices, ${written(tableAlone)} alone`,
    `  ratio of medians ${ratio("p50").toFixed(2)} (${keptBy(ratio("p50") <= bars.tableRatio)}), of p95 ${ratio("p95").toFixed(2)}`,
    `the table's main process: ${megabytes.before.toFixed(0)} MB before, ${megabytes.after.toFixed(0)} MB after`,
    `${sent} attempts acknowledged, ${kept} kept: ${lost} lost, ${doubled} doubled (${keptBy(lost + doubled === 0)})`,
  ];
}

function linesOfPart(part: PartBench, barMs: number): string[] {
  const { name, entries, seconds, asked, load } = part;
  const lasted = (part.untilAt - part.fromAt) / 1_000;
  const share = Object.entries(seconds).map(
    ([kind, each]) => `${kind} ${((100 * each) / lasted).toFixed(0)} %`,
  );
  const each = Math.max(1, entries);
  const head = `${name}: ${entries} entries in ${lasted.toFixed(0)} s, load ${load.toFixed(1)}; of a core: ${share.join(", ")}`;
  if (part.all === null) return [head];
  const bar = name === "pace" ? ` (${keptBy(part.all.p95 <= barMs)})` : "";
  return [
    head,
    `  tap to all painted ${written(part.all)}${bar}; to saved ${written(part.saved)}`,
    `  to the stations' screens ${written(part.stations)}; to the big screens ${written(part.boards)}`,
    `  ${[...part.byName].map(([name, times]) => `${name}: ${written(times)}`).join("; ")}`,
    `  a device asked ${(asked.requests / each).toFixed(2)} times an entry of anybody, ${(asked.bytes / each / 1_000).toFixed(1)} KB`,
  ];
}

/** What an entry costs, beyond what all these processes take when nothing is entered: it hardly depends on what else runs. */
function costOf({ name, entries, seconds, ...part }: PartBench, parts: readonly PartBench[]): string[] {
  const nothing = parts.find((each) => each.name === "nothing");
  if (nothing === undefined || entries === 0) return [];
  const lasted = (part.untilAt - part.fromAt) / (nothing.untilAt - nothing.fromAt);
  const ms = (Object.keys(seconds) as (keyof Seconds)[]).map((kind) => {
    const each = (1_000 * (seconds[kind] - lasted * nothing.seconds[kind])) / entries;
    return `${kind} ${each.toFixed(0)}`;
  });
  const own = name === "pace" ? " (and of the table's own beside it)" : "";
  return [`  processor time of an entry${own}: ${ms.join(", ")} ms`];
}

function written(times: Percentiles | null): string {
  if (times === null) return "never";
  const ms = [times.p50, times.p95, times.p99].map((each) => (each >= 1e9 ? "never" : each.toFixed(0)));
  return `p50 ${ms[0]}, p95 ${ms[1]}, p99 ${ms[2]} ms`;
}

function keptBy(isKept: boolean): string {
  return isKept ? "kept" : "NOT KEPT";
}
