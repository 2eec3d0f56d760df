import type { Typed } from "../../../../electron/domain/keyed/reading.ts";
import type { LengthUnit, TestCode } from "../../../../electron/domain/protocols/protocol.ts";
import { protocolOf } from "../../../../electron/domain/protocols/registry.ts";
import { formatLength } from "../../../../electron/domain/units.ts";
import type { Found } from "../types.ts";

/** How many more attempts fit for what is chosen now. */
export function roomFor(test: TestCode, parameters: unknown, found: Found, values: Typed): number {
  const size = protocolOf(test).slotSize(parameters);
  if (test === "agility") return size - (found.taken[values.direction ?? ""] ?? 0);
  const variant = test === "push-up" ? values.variant : "";
  return size - found.standing.filter((attempt) => attempt.variant === variant).length;
}

/** What the fields start with: how the athlete did it last, the direction that is missing, the reach of today. */
export function startOf(test: TestCode, found: Found, lengths: LengthUnit): Typed {
  switch (test) {
    case "push-up":
      return { variant: found.variant };
    case "agility":
      return { direction: (found.taken.cw ?? 0) > 0 && (found.taken.ccw ?? 0) === 0 ? "ccw" : "cw" };
    case "vertical":
      return found.standingReach === null
        ? {}
        : { standingReach: formatLength(found.standingReach, lengths) };
    case "core":
      return {};
    case "endurance":
      return { finished: "yes" };
  }
}
