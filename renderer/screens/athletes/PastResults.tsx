import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { useWriteDay, writeMoment } from "../../words/dates.ts";
import { useMarkText } from "../../words/marks.ts";
import type { PastResult } from "./types.ts";
import { VoidPastDialog } from "./VoidPastDialog.tsx";

interface PastResultsProps {
  readonly athleteId: number;
  readonly lengths: LengthUnit;
}

/** Lists the imported results; each can be corrected or removed with a reason, which stays visible. */
export function PastResults({ athleteId, lengths }: PastResultsProps) {
  const { t, i18n } = useTranslation("planning");
  const trpc = useTRPC();
  const testWord = useTestWords();
  const markText = useMarkText();
  const writeDay = useWriteDay();
  const [chosen, setChosen] = useState<PastResult | null>(null);
  const past = useQuery(trpc.people.pastResults.queryOptions({ athleteId, lengths }));
  const { standing = [], voided = [] } = past.data ?? {};
  if (standing.length + voided.length === 0) return null;
  const tell = ({ test, date, written }: Pick<PastResult, "test" | "date" | "written">) =>
    `${writeDay(date)}, ${testWord(test, "name")}: ${markText(written)}`;
  return (
    <Section title={t("past.title")}>
      <Stack as="ul" gap={2}>
        {standing.map((mark) => (
          <Row as="li" key={`${mark.date} ${mark.fingerprint}`} gap={4} align="center" between wrap>
            <span>{tell(mark)}</span>
            <Button label={t("past.changeWhich", { what: tell(mark) })} onPress={() => setChosen(mark)}>
              {t("past.change")}
            </Button>
          </Row>
        ))}
        {voided.map((line) => (
          <li key={line.id}>
            <s>{tell(line)}</s>{" "}
            {t(line.instead === null ? "past.removed" : "past.corrected", {
              by: line.by,
              at: writeMoment(line.at, i18n.language),
              reason: line.reason,
              instead: line.instead === null ? "" : markText(line.instead),
            })}
          </li>
        ))}
      </Stack>
      {chosen !== null && (
        <VoidPastDialog
          athleteId={athleteId}
          mark={chosen}
          what={tell(chosen)}
          onClose={() => setChosen(null)}
        />
      )}
    </Section>
  );
}
