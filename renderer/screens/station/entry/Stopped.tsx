import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useKeys } from "../../../app/keys.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { useWriteSeen } from "../../../tests/seen.ts";
import { useWriteTime } from "../../../words/dates.ts";
import type { AttemptView, Found } from "../types.ts";
import css from "./Notice.module.css";

interface FullProps {
  readonly test: TestCode;
  readonly found: Found;
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
}

/** Says that all attempts are entered already: which, and how to correct them. */
export function Full({ test, found, lengths, onCorrect }: FullProps) {
  const { t } = useTranslation("station");
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const newest = found.standing.at(-1);
  useKeys({ "Alt+C": () => newest !== undefined && onCorrect(newest) });
  return (
    <div className={css.notice} data-tone="note" role="status">
      {found.standing.map((attempt) => (
        <p key={attempt.attemptId}>
          {t("athlete.standing", {
            seen: writeSeen(test, attempt.seen, lengths),
            by: attempt.by,
            time: writeTime(attempt.at),
          })}
        </p>
      ))}
      <p>{t("athlete.full")}</p>
      {newest !== undefined && (
        <Row gap={3} wrap>
          <Button hint="Alt+C" onPress={() => onCorrect(newest)}>
            {t("athlete.correct")}
          </Button>
        </Row>
      )}
    </div>
  );
}

/** Says that an earlier test is still to come: results on paper are saved all the same. */
export function StillBefore({ before }: { readonly before: TestCode }) {
  const { t } = useTranslation("planning");
  const testWord = useTestWords();
  return (
    <p className="small quiet" role="status">
      {t("keyed.stillBefore", { test: testWord(before, "name") })}
    </p>
  );
}
