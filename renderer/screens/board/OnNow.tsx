import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import css from "./OnNow.module.css";

/** Number of bibs of one heat that fit where each station runs two. */
const room = 4;

/** Lists the running heats of each station by bib: two heats of one test stand side by side. */
export function OnNow({ heats }: { readonly heats: Board["heats"] }) {
  const { t } = useTranslation("board");
  if (heats.length === 0) return null;
  return (
    <section className={css.on} aria-label={t("onNow")}>
      <h2 className={`quiet strong ${css.title}`}>{t("onNow")}</h2>
      {heats.map(({ test, heats: own }) => (
        <div key={test} className={css.test}>
          <TestMark test={test} />
          <ul className={css.heats}>
            {own.map((bibs) => (
              <li key={bibs[0]}>
                {bibs.slice(0, bibs.length > room ? room - 1 : room).join(" ")}
                {bibs.length > room && <span className="quiet"> +{bibs.length - room + 1}</span>}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
