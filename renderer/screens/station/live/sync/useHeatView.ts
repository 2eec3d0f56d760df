import { type UseQueryResult, useQuery } from "@tanstack/react-query";
import { useEffect } from "react";
import type { LengthUnit } from "../../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../../electron/domain/tests/registry.ts";
import { client } from "../../../../app/client.tsx";
import { keepResults } from "../../../../app/kept-results.ts";
import { isDevice } from "../../../../app/table.ts";
import { timed } from "../../../../sound/clock.ts";
import type { HeatView } from "../../../../tests/live/types.ts";
import { doubtOf, settleFrom } from "./heatClocks.ts";
import { lookAtTableClock } from "./useTableClock.ts";

/** Error of a clock that is certain enough, in ms: half the time of a quick answer. */
const sureMs = 4;
const looks = 8;
const betweenLooksMs = 250;
/** Ms between looks whether another's device is still there. */
const otherEveryMs = 3_000;

/** Whose heat is shown: a device's, the table's (null), or that of whoever asks (undefined). */
export type ShownHolder = string | null | undefined;

async function ask(test: TestCode, lengths: LengthUnit, holder: ShownHolder): Promise<HeatView> {
  const input = holder === undefined ? { test, lengths } : { test, lengths, holder };
  const { answer, ...times } = await timed(() => client.heat.view.query(input));
  const { heat } = answer;
  if (isDevice && heat !== null) keepResults(heat);
  if (heat !== null) settleFrom(heat.heatId, heat, times);
  return answer;
}

/** Reads the desk's view of a station's heat, for a screen that needs no exact clock. */
export function useHeatAtHand(
  test: TestCode,
  lengths: LengthUnit,
  holder?: ShownHolder,
): UseQueryResult<HeatView> {
  return useQuery({
    // The change feed finds queries by the first part of their key, named as the client's own.
    queryKey: [["heat", "view"], { test, lengths, holder }],
    queryFn: () => ask(test, lengths, holder),
    // No change tells of a device that went away without a word.
    refetchInterval: holder === undefined ? false : otherEveryMs,
  });
}

/**
 * Reads the desk's view of a station's heat. Each answer also sets the heat's clock; since a view takes long to make, the clock
 * alone is asked for a few times more until it is certain.
 */
export function useHeatView(
  test: TestCode,
  lengths: LengthUnit,
  holder: ShownHolder,
): UseQueryResult<HeatView> {
  const query = useHeatAtHand(test, lengths, holder);
  const running = query.data?.heat?.elapsedMs != null ? query.data.heat.heatId : null;
  useEffect(() => {
    if (running === null) return;
    let left = looks;
    const timer = setInterval(() => {
      if (left === 0 || doubtOf(running) <= sureMs) return clearInterval(timer);
      left -= 1;
      lookAtTableClock(running);
    }, betweenLooksMs);
    return () => clearInterval(timer);
  }, [running]);
  return query;
}
