import { client } from "../../app/client.tsx";
import type { MendedAttempt } from "../../app/kept-entries.ts";
import type { AttemptView } from "./types.ts";

/** How long a correction waits for what stood before the attempt that it corrects, in ms. */
const chainMs = 1_500;

/** Returns what a device keeps of the attempt that is corrected or taken back, with all that this one corrects itself. */
export async function mendedBy(attempt: AttemptView): Promise<MendedAttempt> {
  const { attemptId, replaces } = attempt;
  if (replaces === null) return mendedOf(attempt, []);
  const away = new Promise<readonly AttemptView[]>((resolve) => setTimeout(() => resolve([]), chainMs));
  const told = client.station.history.query({ attemptId }).then(
    (chain) => chain.map((each) => each.attempt),
    // Out of reach: the id alone says what stood before it.
    () => [],
  );
  return mendedOf(attempt, await Promise.race([told, away]));
}

function mendedOf(
  { who, variant, seen, by, replaces }: AttemptView,
  chain: readonly AttemptView[],
): MendedAttempt {
  const own = { athleteId: who.athleteId, variant, seen, by };
  if (replaces === null) return own;
  const before = chain.find(({ attemptId }) => attemptId === replaces);
  const mended = before === undefined ? undefined : mendedOf(before, chain);
  return { ...own, replaces: { attemptId: replaces, mended } };
}
