import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { TestMark } from "../../parts/TestMark.tsx";
import css from "./CallStrip.module.css";

/** How many bibs of a station have room beside those of the others. */
const roomBeside = [0, 12, 6, 4, 3, 2] as const;

/** Who is called where: always there, in every scene, because a call does not wait for its turn. */
export function CallStrip({ calls }: { readonly calls: Board["calls"] }) {
  const { t } = useTranslation("board");
  const room = roomBeside[calls.length] ?? 2;
  return (
    <section className={css.strip} aria-label={t("calls.title")}>
      <h2 className={css.title}>{t("calls.title")}</h2>
      {calls.length === 0 && <p className={css.none}>{t("calls.none")}</p>}
      <ul className={css.stations}>
        {calls.map(({ test, called }) => (
          <li key={test} className={css.station}>
            <TestMark test={test} size="large" />
            {called.slice(0, room).map(({ bib }) => (
              <strong key={bib}>{bib}</strong>
            ))}
            {called.length > room && <small>+{called.length - room}</small>}
          </li>
        ))}
      </ul>
    </section>
  );
}
