import { useTranslation } from "react-i18next";
import type { Best, First } from "../../../electron/api/board/schemas.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { FirstHero } from "./FirstHero.tsx";
import { Hero } from "./Hero.tsx";
import css from "./NewestScene.module.css";
import { heroOf, nameOf } from "./scenes.ts";
import { roomFor, useGain, useLabel } from "./words.ts";

const before = 6;

interface NewestSceneProps {
  readonly newest: readonly Best[];
  readonly firsts: readonly First[];
  /** How often all scenes were shown. */
  readonly round: number;
  /** True if the first best just happened. */
  readonly fresh: boolean;
}

/** Shows the newest best or the newest first result as large as the hall needs, and what came before it. */
export function NewestScene({ newest, firsts, round, fresh }: NewestSceneProps) {
  const { t } = useTranslation("board");
  const hero = heroOf(newest, firsts, fresh ? 0 : round);
  if (hero === undefined) return <EmptyBoard />;
  const others = [...newest, ...firsts].filter((each) => each !== hero).sort((a, b) => b.seq - a.seq);
  return (
    <div className={css.newest}>
      <div className={css.hero} aria-live="polite">
        {"gain" in hero ? (
          <Hero key={nameOf(hero)} best={hero} fresh={fresh} />
        ) : (
          <FirstHero key={nameOf(hero)} first={hero} />
        )}
      </div>
      <div className={css.before}>
        <h2 className={`quiet strong ${css.title}`}>{t("newest.before")}</h2>
        {others.length === 0 && <p className={`quiet ${css.note}`}>{t("newest.onlyOne")}</p>}
        <ol className={css.list}>
          {others.slice(0, before).map((other) => (
            <Before key={other.seq} news={other} />
          ))}
        </ol>
      </div>
    </div>
  );
}

function Before({ news }: { readonly news: Best | First }) {
  const label = useLabel()(news.label);
  return (
    <li className={css.row} data-test={news.test}>
      <TestMark test={news.test} size="medium" />
      <span className={`strong two-lines ${css.label}`} data-room={roomFor(label)}>
        {label}
      </span>
      {"gain" in news ? <Gained best={news} /> : <FirstOne />}
    </li>
  );
}

function Gained({ best }: { readonly best: Best }) {
  const gain = useGain()(best.test, best.gain);
  return (
    <span className={css.gain}>
      <strong>{gain.number}</strong> <small>{gain.words}</small>
    </span>
  );
}

function FirstOne() {
  const { t } = useTranslation("board");
  return <span className={`quiet ${css.first}`}>{t("wall.first")}</span>;
}

/** Shows, before the first news, the five tests painted on the floor, and what a best is. */
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
      <div className={`quiet ${css.words}`}>
        <p>{t("empty.best")}</p>
        <p>{t("empty.first")}</p>
        <p className={`strong ${css.invitation}`}>{t("empty.gain")}</p>
      </div>
    </div>
  );
}
