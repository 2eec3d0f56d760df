import { useTranslation } from "react-i18next";
import type { First } from "../../../electron/api/board/schemas.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useUnitWord } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import css from "./FirstHero.module.css";
import { roomFor, useLabel } from "./words.ts";

/** A first result: the person is the news, and the number stays small, since there is nothing yet to hold it against. */
export function FirstHero({ first }: { readonly first: First }) {
  const { t } = useTranslation("board");
  const show = useShowNumber();
  const unitWord = useUnitWord();
  const label = useLabel()(first.label);
  const { number, unit } = first.written;
  return (
    <article className={`strong ${css.first}`} data-test={first.test}>
      <TestMark test={first.test} size="large" name="ability" />
      <p className={css.welcome}>{t("first.title")}</p>
      <h2 className={`two-lines ${css.who}`} data-room={roomFor(label)}>
        {label}
      </h2>
      <p className={`quiet ${css.result}`}>
        <b>{show(number)}</b> {unitWord(unit, number)}
      </p>
      <p className={css.next}>{t("first.next")}</p>
    </article>
  );
}
