import { useState } from "react";
import type { LengthUnit } from "../../../../../electron/domain/tests/protocol.ts";
import { CorrectDialog } from "../../CorrectDialog.tsx";
import { HistoryDialog } from "../../HistoryDialog.tsx";
import { Recent } from "../../Recent.tsx";
import type { AttemptView, RecentAttempt } from "../../types.ts";

interface LastMarksProps {
  readonly recent: readonly RecentAttempt[];
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
}

/** Number of marks shown, about the last heat; older ones are on the athletes' own pages. */
const few = 6;

/** Lists the newest attempts, to be corrected after their heat is over. */
export function LastMarks({ recent, parameters, lengths }: LastMarksProps) {
  const [over, setOver] = useState<{ what: "correct" | "history"; attempt: AttemptView } | null>(null);
  if (recent.length === 0) return null;
  const close = () => setOver(null);
  return (
    <>
      <Recent
        recent={recent.slice(0, few)}
        lengths={lengths}
        onCorrect={(attempt) => setOver({ what: "correct", attempt })}
        onHistory={(attempt) => setOver({ what: "history", attempt })}
      />
      {over?.what === "correct" && (
        <CorrectDialog attempt={over.attempt} parameters={parameters} lengths={lengths} onClose={close} />
      )}
      {over?.what === "history" && <HistoryDialog attempt={over.attempt} lengths={lengths} onClose={close} />}
    </>
  );
}
