import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { useWriteSeen } from "../../tests/seen.ts";
import { useWriteTime } from "../../words/dates.ts";
import { useUnitWord } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import css from "./Recent.module.css";
import type { AttemptView, RecentAttempt } from "./types.ts";

interface RecentProps {
  readonly recent: readonly RecentAttempt[];
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
  readonly onHistory: (attempt: AttemptView) => void;
}

/** Lists the newest attempts, each to be corrected or looked into. */
export function Recent({ recent, ...rest }: RecentProps) {
  const { t } = useTranslation("station");
  return (
    <Section title={t("recent.title")}>
      {recent.length === 0 ? (
        <p className="quiet">{t("recent.empty")}</p>
      ) : (
        <ol>
          {recent.map((each) => (
            <Attempt key={each.attempt.attemptId} recent={each} {...rest} />
          ))}
        </ol>
      )}
    </Section>
  );
}

interface AttemptProps extends Omit<RecentProps, "recent"> {
  readonly recent: RecentAttempt;
}

function Attempt({ recent, lengths, onCorrect, onHistory }: AttemptProps) {
  const { t } = useTranslation(["station", "common"]);
  const testWord = useTestWords();
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const { attempt, written } = recent;
  const { who } = attempt;
  const named = { bib: who.bib, name: who.name };
  return (
    <li className={css.row} data-void={attempt.void !== null}>
      <span className={css.bib}>{who.bib}</span>
      <div className={css.what}>
        <Row as="p" gap={3} lines={0} align="baseline" wrap>
          <span className="strong">{who.name}</span>
          {written !== null && <Amount written={written} />}
        </Row>
        <Row as="p" gap={3} lines={0} wrap className="small quiet">
          <span className={css.seen}>{writeSeen(attempt.test, attempt.seen, lengths)}</span>
          {attempt.variant !== "" && (
            <span>{testWord(attempt.test, `choice.variant.${attempt.variant}`)}</span>
          )}
          <span>
            {writeTime(attempt.at)} {attempt.by}
          </span>
        </Row>
        {attempt.void !== null && <p className={css.void}>{t("recent.void", attempt.void)}</p>}
      </div>
      <div className={css.actions}>
        {attempt.void === null && (
          <Button label={t("recent.correctWho", named)} onPress={() => onCorrect(attempt)}>
            {t("recent.correct")}
          </Button>
        )}
        <Button label={t("recent.historyWho", named)} onPress={() => onHistory(attempt)}>
          {t("recent.history")}
        </Button>
      </div>
    </li>
  );
}

/** Shows the athlete's mark of today, or what it still lacks. */
function Amount({ written }: { readonly written: NonNullable<RecentAttempt["written"]> }) {
  const say = useSay();
  const unitWord = useUnitWord();
  const show = useShowNumber();
  if (written.number === "") return written.note === undefined ? null : <span>{say(written.note)}</span>;
  return (
    <span>
      <strong className={css.number}>{show(written.number)}</strong> {unitWord(written.unit)}
    </span>
  );
}
