import { useTranslation } from "react-i18next";
import type { Best } from "../../../electron/api/board/schemas.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { Hero } from "./Hero.tsx";
import css from "./NewestScene.module.css";
import { nameOf } from "./scenes.ts";
import { roomFor, useGain, useLabel } from "./words.ts";

const before = 6;

interface NewestSceneProps {
  readonly newest: readonly Best[];
  /** True if the first one just happened. */
  readonly fresh: boolean;
}

/** Shows the newest best as large as the hall needs, and those just before it. */
export function NewestScene({ newest, fresh }: NewestSceneProps) {
  const { t } = useTranslation("board");
  const [best, ...others] = newest;
  if (best === undefined) return <EmptyBoard />;
  return (
    <div className={css.newest}>
      <div className={css.hero} aria-live="polite">
        <Hero key={nameOf(best)} best={best} fresh={fresh} />
      </div>
      <div className={css.before}>
        <h2 className={css.title}>{t("newest.before")}</h2>
        {others.length === 0 && <p className={css.note}>{t("newest.onlyOne")}</p>}
        <ol className={css.list}>
          {others.slice(0, before).map((other) => (
            <Before key={other.seq} best={other} />
          ))}
        </ol>
      </div>
    </div>
  );
}

function Before({ best }: { readonly best: Best }) {
  const gain = useGain()(best.test, best.gain);
  const label = useLabel()(best.label);
  return (
    <li className={css.row} data-test={best.test}>
      <TestMark test={best.test} size="medium" />
      <span className={css.label} data-room={roomFor(label)}>
        {label}
      </span>
      <span className={css.gain}>
        <strong>{gain.number}</strong> <small>{gain.words}</small>
      </span>
    </li>
  );
}

/** Shows, before the first best, the five tests painted on the floor, and what a best is. */
function EmptyBoard() {
  const { t } = useTranslation("board");
  return (
    <div className={css.empty}>
      <ul className={css.tests}>
        {testCodes.map((test) => (
          <li key={test}>
            <TestMark test={test} size="hero" name="ability" look="painted" />
          </li>
        ))}
      </ul>
      <h2 className={css.emptyBoardTitle}>{t("empty.title")}</h2>
      <div className={css.words}>
        <p>{t("empty.best")}</p>
        <p>{t("empty.first")}</p>
        <p className={css.invitation}>{t("empty.gain")}</p>
      </div>
    </div>
  );
}
