import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./CallStrip.module.css";

/** Number of bibs of one station that fit beside four other stations, in two lines. */
const room = 4;

/** Shows the calls of each station in every scene, because a call does not wait for its turn. */
export function CallStrip({ calls }: { readonly calls: Board["calls"] }) {
  const { t } = useTranslation("board");
  return (
    <section className={css.strip} aria-label={t("calls.title")}>
      <h2 className={css.title}>{t("calls.title")}</h2>
      {calls.length === 0 ? (
        <p className={`quiet ${css.none}`}>{t("calls.none")}</p>
      ) : (
        <Stations calls={calls} />
      )}
    </section>
  );
}

function Stations({ calls }: { readonly calls: Board["calls"] }) {
  return (
    <ul className={css.stations}>
      {calls.map(({ test, called }) => (
        <li key={test} className={css.station}>
          <TestMark test={test} size={calls.length > 4 ? "medium" : "large"} />
          <ul className={`figures ${css.bibs}`} data-lines={called.length > 2 ? 2 : 1}>
            {called.slice(0, called.length > room ? room - 1 : room).map(({ bib }) => (
              <li key={bib}>{bib}</li>
            ))}
            {called.length > room && (
              <li className={`quiet strong ${css.more}`}>+{called.length - room + 1}</li>
            )}
          </ul>
        </li>
      ))}
    </ul>
  );
}
