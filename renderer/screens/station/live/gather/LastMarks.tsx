import { useState } from "react";
import type { LengthUnit } from "../../../../../electron/domain/tests/protocol.ts";
import { HistoryDialog } from "../../HistoryDialog.tsx";
import { Recent } from "../../Recent.tsx";
import type { AttemptView, RecentAttempt } from "../../types.ts";

interface LastMarksProps {
  readonly recent: readonly RecentAttempt[];
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
}

/** Number of marks shown, about the last heat; older ones are on the athletes' own pages. */
const few = 6;

/** Lists the newest attempts, to be corrected after their heat is over. */
export function LastMarks({ recent, parameters, lengths, onCorrect }: LastMarksProps) {
  const [shown, setShown] = useState<AttemptView | null>(null);
  if (recent.length === 0) return null;
  return (
    <>
      <Recent recent={recent.slice(0, few)} {...{ parameters, lengths, onCorrect }} onHistory={setShown} />
      {shown !== null && <HistoryDialog attempt={shown} lengths={lengths} onClose={() => setShown(null)} />}
    </>
  );
}
