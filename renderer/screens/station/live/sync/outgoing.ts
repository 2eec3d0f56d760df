import type { HeatEvent } from "../../../../../electron/domain/heats/heat.ts";
import type { ReadMoment } from "../../../../../electron/domain/heats/start.ts";
import type { OutboxView } from "../../../../app/outbox.ts";

/** An item of a heat to be sent to the desk. Times are by the heat's clock, except a start's. */
export type Outgoing =
  /**
   * `at`: the moment of the start's tap in ms since 1970, by the page's monotonic clock, so that a later page knows it.
   * `tapped`: the same on the table's clock; null where this page had not read that.
   */
  | { readonly what: "start"; readonly id: string; readonly at: number; readonly tapped: ReadMoment | null }
  | { readonly what: "tap"; readonly id: string; readonly tap: HeatEvent }
  | {
      readonly what: "undo";
      readonly id: string;
      readonly eventId: string;
      readonly lane: number | null;
      readonly atMs: number;
    };

/** Returns the items to send together: consecutive taps; a start and an undo go alone. */
export function firstBatch(items: readonly Outgoing[]): readonly Outgoing[] {
  const [first] = items;
  if (first === undefined || first.what !== "tap") return items.slice(0, 1);
  const end = items.findIndex(({ what }) => what !== "tap");
  return items.slice(0, end < 0 ? items.length : end);
}

/** Returns unsent items as the events that the desk will store. */
export function outgoingEvents(items: readonly Outgoing[]): HeatEvent[] {
  return items.flatMap((item): HeatEvent[] => {
    if (item.what === "tap") return [item.tap];
    if (item.what === "start") return [];
    const { id, lane, atMs, eventId } = item;
    return [{ id, lane, atMs, kind: "undo", detail: { eventId } }];
  });
}

/** The outbox of a heat, for its screen. */
export type HeatOutboxView = OutboxView<Outgoing>;
