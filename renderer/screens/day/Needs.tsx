import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { useSay } from "../../app/say.ts";
import { Panel } from "../../parts/Panel.tsx";
import css from "./DayScreen.module.css";
import type { Overview } from "./overview.ts";

/** What somebody has to do, each with the way to where it is done. */
export function Needs({ needs }: { readonly needs: Overview["needs"] }) {
  const { t } = useTranslation("day");
  const say = useSay();
  return (
    <Panel title={t("now.title")} tone={needs.length > 0 ? "alert" : "plain"}>
      {needs.length === 0 && <p>{t("now.none")}</p>}
      <ul className={css.needs}>
        {needs.map((need) => (
          <li key={`${need.to} ${say(need.sentence)}`}>
            <Link className={css.need} href={need.to}>
              {say(need.sentence)}
              <svg className={css.arrow} viewBox="0 0 12 16" aria-hidden="true">
                <path d="m2 2 7 6-7 6" />
              </svg>
            </Link>
          </li>
        ))}
      </ul>
    </Panel>
  );
}
