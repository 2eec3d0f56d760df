import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { type Hands, type IsSaved, keyIn, takePaper } from "./hall-hands.ts";
import type { ListedAthlete } from "./hall-list.ts";
import { heatSize, liveHeats } from "./hall-live.ts";

/** Who holds the station of a test. */
export interface Station {
  readonly test: TestCode;
  readonly hands: Hands;
  readonly isSaved: IsSaved;
}

/**
 * Takes athletes at a station, in their order and each when they have come there: the first heat live where the test can
 * be, everybody else from paper.
 * @param come when each has come; the answer says in the same order when each is done
 */
export function takeAll(
  { test, hands, isSaved }: Station,
  athletes: readonly ListedAthlete[],
  come: readonly Promise<void>[],
): Promise<void>[] {
  const run = liveHeats[test];
  const first = run === undefined ? [] : athletes.slice(0, heatSize);
  const heat = Promise.all(come.slice(0, first.length))
    .then(() => run?.(hands, first, isSaved))
    .then(() => takePaper(hands));
  let before = heat;
  const others = athletes.slice(first.length).map((athlete, index) => {
    before = Promise.all([before, come[first.length + index]]).then(() =>
      keyIn(hands, test, athlete, isSaved),
    );
    return before;
  });
  return [...first.map(() => heat), ...others];
}
