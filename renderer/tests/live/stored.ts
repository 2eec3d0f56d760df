import type { AttemptOf, TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import type { LiveLane } from "./tool.ts";

/**
 * Returns a lane's attempts of this heat as they are stored, in order: a corrected one as its correction, null where it
 * was cancelled, and as tapped while the desk has not heard of it yet.
 */
export function storedOf<Test extends TestCode>(
  test: Test,
  lane: LiveLane<Test>,
): (AttemptOf<Test> | null)[] {
  const stored = new Map(lane.in.entered.map((each) => [each.key, each]));
  return lane.state.results.map(({ key, seen }) => {
    const kept = stored.get(key);
    const tapped = seen as AttemptOf<Test>;
    if (kept === undefined) return tapped;
    const { attempt, corrected } = kept;
    if (attempt.void === null) return protocolOf(test).attempt.parse(attempt.seen) as AttemptOf<Test>;
    // Taken back and tapped anew under the same key: what is stored is of before.
    return corrected || JSON.stringify(attempt.seen) === JSON.stringify(seen) ? null : tapped;
  });
}
