import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/protocols/protocol.ts";
import { TestMark } from "../../parts/TestMark.tsx";
import css from "./EmptyBoard.module.css";

/** Before the first best: the five tests painted on the floor, and what a best is. */
export function EmptyBoard() {
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
      <h2 className={css.title}>{t("empty.title")}</h2>
      <div className={css.words}>
        <p>{t("empty.best")}</p>
        <p>{t("empty.first")}</p>
        <p className={css.opponent}>{t("empty.opponent")}</p>
      </div>
    </div>
  );
}
