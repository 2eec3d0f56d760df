import { type EnduranceParameters, endurance } from "../../../electron/domain/tests/endurance/protocol.ts";
import { formatTime } from "../../../electron/domain/units.ts";

/** Formats a circuit's time as scored: hundredths are rounded up to the next tenth, by the protocol's own rule. */
export function writeSplit(parameters: EnduranceParameters, ms: number): string {
  const mark = endurance.score(parameters, [{ finished: true, time: Math.ceil(ms) }]);
  return mark.state === "complete" ? formatTime(mark.value, true) : "";
}
