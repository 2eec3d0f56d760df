import { useTranslation } from "react-i18next";
import { Tag } from "../../parts/Tag.tsx";
import css from "./Station.module.css";
import type { StationView } from "./types.ts";

/** How the station stands, in one glance. */
export function Counts({ counts }: { readonly counts: StationView["counts"] }) {
  const { t } = useTranslation("station");
  return (
    <ul className={css.counts} aria-label={t("counts.label")}>
      {(["waiting", "done", "later", "leftOut"] as const).map((name) =>
        name === "leftOut" && counts.leftOut === 0 ? null : (
          <li key={name}>
            <Tag tone={name === "waiting" && counts.waiting > 0 ? "go" : "quiet"}>
              {t(`counts.${name}`, { count: counts[name] })}
            </Tag>
          </li>
        ),
      )}
    </ul>
  );
}
