import { memo } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit, Written } from "../../../electron/domain/tests/protocol.ts";
import { protocolOf } from "../../../electron/domain/tests/registry.ts";
import { isSameRow, useSteady } from "../../app/steady.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { faceOf, readParameters, useTexts } from "../../tests/registry.ts";
import { useWriteSeen } from "../../tests/seen.ts";
import { useWriteTime } from "../../words/dates.ts";
import { useUnitWord } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { Doubts } from "./Doubts.tsx";
import css from "./Recent.module.css";
import type { AttemptView, RecentAttempt } from "./types.ts";

interface RecentProps {
  readonly recent: readonly RecentAttempt[];
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
  readonly onHistory: (attempt: AttemptView) => void;
}

/** Lists the newest attempts, each to be corrected or looked into. */
export function Recent({ recent, onCorrect, onHistory, ...rest }: RecentProps) {
  const { t } = useTranslation("station");
  const actions = { onCorrect: useSteady(onCorrect), onHistory: useSteady(onHistory) };
  return (
    <Section title={t("recent.title")}>
      {recent.length === 0 ? (
        <p className="quiet">{t("recent.empty")}</p>
      ) : (
        <ol>
          {recent.map((each) => (
            <Attempt key={each.attempt.attemptId} recent={each} {...rest} {...actions} />
          ))}
        </ol>
      )}
    </Section>
  );
}

interface AttemptProps extends Omit<RecentProps, "recent"> {
  readonly recent: RecentAttempt;
}

/** Drawn again when it has changed itself: fifteen of them are most of a station's screen, and one of them is new. */
const Attempt = memo(AttemptRow, isSameRow<AttemptProps>);

function AttemptRow({ recent, parameters, lengths, onCorrect, onHistory }: AttemptProps) {
  const { t } = useTranslation(["station", "common"]);
  const testWord = useTestWords();
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const { attempt, written, doubts } = recent;
  const { who } = attempt;
  const named = { bib: who.bib, name: who.name };
  const own = useOwn()(attempt, parameters, lengths);
  return (
    <li className={css.row} data-void={attempt.void !== null}>
      <span className={`numeral ${css.bib}`}>{who.bib}</span>
      <div className={css.what}>
        <Row as="p" gap={3} lines={0} align="baseline" wrap className={css.first}>
          <span className={`strong ${css.name}`}>{who.name}</span>
          {written !== null && own !== null && (
            <>
              <Amount written={own} />
              <Whole written={written} />
            </>
          )}
          {written !== null && own === null && <Amount written={written} />}
        </Row>
        <Row as="p" gap={3} lines={0} wrap className={`small quiet ${css.second}`}>
          <span className={css.seen}>{writeSeen(attempt.test, attempt.seen, lengths)}</span>
          {attempt.variant !== "" && (
            <span>{testWord(attempt.test, `choice.variant.${attempt.variant}`)}</span>
          )}
          <span>
            {writeTime(attempt.at)} {attempt.by}
          </span>
        </Row>
        {attempt.void !== null && <p className={`small ${css.void}`}>{t("recent.void", attempt.void)}</p>}
        <Doubts
          doubts={doubts}
          attemptId={attempt.attemptId}
          bib={who.bib}
          onCorrect={() => onCorrect(attempt)}
        />
      </div>
      <div className={css.actions}>
        {attempt.void === null && doubts.length === 0 && (
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

/** Returns a writer of what one attempt comes to by itself, where several make the mark; null where it is the mark. */
function useOwn(): (attempt: AttemptView, parameters: unknown, lengths: LengthUnit) => Written | null {
  const textsOf = useTexts();
  return ({ test, seen: kept }, parameters, lengths) => {
    const protocol = protocolOf(test);
    const seen = protocol.attempt.parse(kept);
    const rules = readParameters(test, parameters);
    if (protocol.slotSize(rules) === 1)
      return faceOf(test).alone?.(textsOf(test), rules, seen).written ?? null;
    const mark = protocol.score(rules, [seen]);
    return mark.state === "complete" ? protocol.write(mark.value, lengths) : null;
  };
}

/** The mark that an attempt is a part of. */
function Whole({ written }: { readonly written: NonNullable<RecentAttempt["written"]> }) {
  const { t } = useTranslation("station");
  return (
    <span className={`small quiet ${css.whole}`}>
      {t("recent.whole")} <Amount written={written} />
    </span>
  );
}

/** Shows the athlete's mark of today, or what it still lacks. */
function Amount({ written }: { readonly written: NonNullable<RecentAttempt["written"]> }) {
  const say = useSay();
  const unitWord = useUnitWord();
  const show = useShowNumber();
  if (written.number === "")
    return written.note === undefined ? null : <span className={css.name}>{say(written.note)}</span>;
  return (
    <span className={css.amount}>
      <strong className={`figures ${css.number}`}>{show(written.number)}</strong>{" "}
      <span className={css.unit}>{unitWord(written.unit, written.number)}</span>
    </span>
  );
}
