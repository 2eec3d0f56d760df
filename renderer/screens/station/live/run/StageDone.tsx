import { useTranslation } from "react-i18next";
import type { Live } from "../../../../tests/live/tool.ts";
import css from "./StageDone.module.css";
import { Standing } from "./Standing.tsx";

const standings = ["best", "first", "equal", "below"] as const;

/** Counts the marks of each standing, in place of the clock once all lanes are done. */
export function StageDone({ live }: { readonly live: Live }) {
  const { t } = useTranslation("live");
  const told = live.lanes.map(({ in: each }) => each.told?.news?.standing ?? null);
  return (
    <section className={css.done} aria-label={t("done.title")}>
      <h2 className={css.title} role="status">
        {t("done.title")}
      </h2>
      <ul className={css.sums}>
        {standings.map((standing) => {
          const count = told.filter((each) => each === standing).length;
          if (count === 0) return null;
          return (
            <li key={standing} className={css.sum}>
              <strong className={css.count}>{count}</strong>
              <Standing standing={standing} />
            </li>
          );
        })}
      </ul>
      <p className={css.how}>{t("done.how")}</p>
    </section>
  );
}
