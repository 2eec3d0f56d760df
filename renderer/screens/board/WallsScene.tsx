import { useTranslation } from "react-i18next";
import type { Board, Row } from "../../../electron/api/board/schemas.ts";
import type { TestCode } from "../../../electron/domain/protocols/protocol.ts";
import { TestMark } from "../../parts/TestMark.tsx";
import { nameOf, pageOf } from "./scenes.ts";
import css from "./WallsScene.module.css";
import { roomFor, useGain, useLabel, useUnit } from "./words.ts";

const rowsOfPage = 8;

interface WallsSceneProps {
  readonly walls: Board["walls"];
  readonly round: number;
}

/** Two or three tests side by side, each with the gains of today: the largest first, and nobody last. */
export function WallsScene({ walls, round }: WallsSceneProps) {
  return (
    <div className={css.walls}>
      {walls.map((wall) => (
        <Wall key={wall.test} test={wall.test} rows={wall.rows} round={round} />
      ))}
    </div>
  );
}

interface WallProps {
  readonly test: TestCode;
  readonly rows: readonly Row[];
  readonly round: number;
}

function Wall({ test, rows, round }: WallProps) {
  const { t } = useTranslation("board");
  const page = pageOf(rows, rowsOfPage, round);
  const to = page.from + page.rows.length;
  return (
    <section className={css.wall} data-test={test}>
      <h2 className={css.title}>
        <TestMark test={test} size="large" name="ability" />
      </h2>
      <p className={css.by}>
        {t(`wall.by.${test}`)}
        {rows.length > rowsOfPage && (
          <span className={css.page}>{t("wall.page", { from: page.from + 1, to, total: rows.length })}</span>
        )}
      </p>
      <ol className={css.rows}>
        {page.rows.map((row) => (
          <WallRow key={`${nameOf({ ...row, test })} ${row.seq}`} test={test} row={row} />
        ))}
      </ol>
    </section>
  );
}

function WallRow({ test, row }: { readonly test: TestCode; readonly row: Row }) {
  const { t } = useTranslation("board");
  const label = useLabel()(row.label);
  const unit = useUnit()(row.written.unit);
  const said = useGain();
  return (
    <li className={css.row} data-standing={row.standing}>
      <span className={css.label} data-room={roomFor(label)}>
        {label}
      </span>
      <span className={css.mark}>
        {row.written.number} <small>{unit}</small>
      </span>
      {row.gain === null || row.standing !== "best" ? (
        <span className={css.standing}>{t(row.standing === "equal" ? "wall.equal" : "wall.first")}</span>
      ) : (
        <strong className={css.gain}>
          {said(test, row.gain).number}
          {row.gain.unit === "s" && <small> {t("wall.seconds")}</small>}
        </strong>
      )}
    </li>
  );
}
