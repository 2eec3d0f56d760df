import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./Calls.module.css";
import { roomFor } from "./words.ts";

/** Number of calls that fit at each of five stations. */
const room = 4;

/** Lists each station's calls: the bib large, the name beside it where the athlete agreed. */
export function Calls({ calls }: { readonly calls: Board["calls"] }) {
  const { t } = useTranslation("board");
  return (
    <section className={css.calls}>
      <h2 className={`quiet strong ${css.title}`}>{t("calls.title")}</h2>
      {calls.length === 0 && <p className={`quiet ${css.none}`}>{t("calls.none")}</p>}
      {calls.map(({ test, called }) => (
        <div key={test} className={css.station}>
          <TestMark test={test} size="large" />
          <ul className={css.called}>
            {called.slice(0, called.length > room ? room - 1 : room).map(({ bib, name }) => (
              <li key={bib}>
                <b>{bib}</b>
                {name !== null && (
                  <span className="two-lines" data-room={roomFor(name)}>
                    {name}
                  </span>
                )}
              </li>
            ))}
            {called.length > room && (
              <li className="quiet">{t("calls.more", { count: called.length - room + 1 })}</li>
            )}
          </ul>
        </div>
      ))}
    </section>
  );
}
