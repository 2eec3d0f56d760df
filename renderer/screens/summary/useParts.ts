import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useChanges } from "./parts/useChanges.tsx";
import { useCorrections } from "./parts/useCorrections.tsx";
import { useCounts } from "./parts/useCounts.tsx";
import { useErrors } from "./parts/useErrors.tsx";
import { useEverybody } from "./parts/useEverybody.tsx";
import { useHighlights } from "./parts/useHighlights.tsx";
import { useJudges } from "./parts/useJudges.tsx";
import { useMissing } from "./parts/useMissing.tsx";
import { useStations } from "./parts/useStations.tsx";
import { type AnyPart, anyPart, type Summary } from "./summary.ts";

/** Returns the parts of a summary in order, for screen and paper: athletes first, then how the day went. */
export function useParts(summary: Summary, lengths: LengthUnit): readonly AnyPart[] {
  return [
    anyPart(useEverybody(summary, lengths)),
    anyPart(useHighlights(summary, lengths)),
    anyPart(useChanges(summary, lengths)),
    anyPart(useMissing(summary)),
    anyPart(useCounts(summary)),
    anyPart(useCorrections(summary, lengths)),
    anyPart(useStations(summary)),
    anyPart(useJudges(summary, lengths)),
    anyPart(useErrors(summary)),
  ];
}
