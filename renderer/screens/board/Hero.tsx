import { useTranslation } from "react-i18next";
import type { Best } from "../../../electron/api/board/schemas.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { GainTape } from "./GainTape.tsx";
import css from "./Hero.module.css";
import { roomFor, useGain, useLabel } from "./words.ts";

interface HeroProps {
  readonly best: Best;
  /** True if it just happened: then the tape is animated. */
  readonly fresh: boolean;
}

/** Shows one best: the athlete, the test, the gain over all earlier marks, and whether it exceeds the day's noise. */
export function Hero({ best, fresh }: HeroProps) {
  const { t } = useTranslation("board");
  const say = useSay();
  const show = useShowNumber();
  const gain = useGain()(best.test, best.gain);
  const label = useLabel()(best.label);
  const { note } = best.written;
  return (
    <article className={`strong ${css.best}`} data-test={best.test} data-fresh={fresh}>
      <TestMark test={best.test} size="large" name="ability" />
      <h2 className={`two-lines ${css.who}`} data-room={roomFor(label)}>
        {label}
      </h2>
      <p className={css.gain}>
        <strong data-digits={gain.number.length}>{gain.number}</strong>
        <span className={css.words}>
          <span className={css.more}>{gain.words}</span>
          <span className={`quiet ${css.now}`}>
            {t("newest.now")} <b>{show(best.written.number)}</b>
            {note !== undefined && <span className={css.note}> {say(note)}</span>}
          </span>
        </span>
      </p>
      <GainTape spreads={best.spreads} />
      <p className={css.verdict}>{t(`newest.verdict.${best.verdict}`)}</p>
    </article>
  );
}
