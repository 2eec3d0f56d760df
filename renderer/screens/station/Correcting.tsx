import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { CorrectDialog } from "./CorrectDialog.tsx";
import type { Corrections } from "./drafts.ts";

interface CorrectingProps {
  readonly corrections: Corrections;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
}

/** The correction that is open over a station, whichever of its views is under it. */
export function Correcting({ corrections, ...rest }: CorrectingProps) {
  if (corrections.open === null) return null;
  const { attempt } = corrections.open;
  return <CorrectDialog key={attempt.attemptId} {...{ attempt, corrections, ...rest }} />;
}
