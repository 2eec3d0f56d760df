import { useTranslation } from "react-i18next";
import type { Board, BoardRow } from "../../../electron/api/board/schemas.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useShowNumber } from "../../words/numbers.ts";
import { nameOf } from "./scenes.ts";
import css from "./Wall.module.css";
import { roomFor, useGain, useGainIn, useLabel } from "./words.ts";

/** How many rows of a test are shown at once. */
export const rowsOfPage = 8;
/** Number of rows up to which they are set larger. */
const fewRows = 4;

/** Shows today's gains in one test, or a part of them. */
export function Wall({ test, rows, part, parts }: Board["walls"][number]) {
  const { t } = useTranslation("board");
  const gainIn = useGainIn();
  return (
    <section className={css.wall} data-test={test}>
      <h2 className={css.title}>
        <TestMark test={test} size="large" name="ability" />
      </h2>
      <p className={`quiet ${css.under}`}>
        <span>{gainIn(test, rows[0]?.written.unit ?? "")}</span>
        {parts > 1 && <span>{t("wall.part", { part, parts })}</span>}
      </p>
      <ol className={css.rows} data-few={parts === 1 && rows.length <= fewRows}>
        {rows.map((row) => (
          <WallRow key={`${nameOf({ ...row, test })} ${row.seq}`} test={test} row={row} />
        ))}
      </ol>
    </section>
  );
}

function WallRow({ test, row }: { readonly test: TestCode; readonly row: BoardRow }) {
  const { t } = useTranslation("board");
  const label = useLabel()(row.label);
  const said = useGain();
  const show = useShowNumber();
  const figures = `${row.written.number}${row.gain === null ? "" : said(test, row.gain).number}`;
  return (
    <li className={css.row}>
      <span className={`strong two-lines ${css.label}`} data-room={roomFor(label, figures)}>
        {label}
      </span>
      <span className={`quiet ${css.mark}`}>{show(row.written.number)}</span>
      {row.gain === null || row.standing === "first" ? (
        <span className={css.standing}>{t(row.standing === "first" ? "wall.first" : "wall.equal")}</span>
      ) : (
        <strong className={`figures ${css.gain}`}>
          {said(test, row.gain).number}
          {row.gain.unit === "s" && <small> {t("wall.seconds")}</small>}
        </strong>
      )}
    </li>
  );
}
