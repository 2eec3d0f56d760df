import { definitionOf, testCodes } from "../domain/tests/registry.ts";
import type { DayProtocol } from "../store/tables/days.ts";
import { wrapped } from "./wrapped.ts";

/** One paragraph per test, with the parameters of that day, in the order of the tests. */
export function howMarksAreMade(held: readonly DayProtocol[]): string {
  return testCodes
    .flatMap((test) => {
      const parameters = held.find((protocol) => protocol.test === test)?.parameters;
      if (parameters === undefined) return [];
      const { protocol, english } = definitionOf(test);
      const better = protocol.better === "higher" ? "Higher is better." : "**Lower is better.**";
      const how = english.how(protocol.parameters.parse(parameters));
      return [wrapped(`**\`${test}\`** (${protocol.grain.unit}). ${how} ${better}`)];
    })
    .join("\n\n");
}
