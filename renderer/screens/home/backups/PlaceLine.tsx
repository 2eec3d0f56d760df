import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { type BackupPlace, useWhen } from "../../../parts/backups/useBackups.ts";
import { useSay } from "../../../words/say.ts";
import css from "./Backups.module.css";

interface PlaceLineProps {
  readonly title: string;
  /** Null where no folder was chosen. */
  readonly place: BackupPlace | null;
  /** The text while there is no backup yet. */
  readonly none: string;
  /** One more fact, such as whether it is locked. */
  readonly fact?: string;
  /** The actions on the place. */
  readonly children: ReactNode;
}

/** Shows one place of backups: its last good one, its folder, its trouble and its actions. */
export function PlaceLine({ title, place, none, fact, children }: PlaceLineProps) {
  const { t } = useTranslation("backups");
  const say = useSay();
  const when = useWhen();
  const last = place?.last ?? null;
  return (
    <section className={css.place} aria-label={title}>
      <h3 className="lead">{title}</h3>
      <p className="strong">{last === null ? none : t("last", { when: when(last) })}</p>
      {place !== null && !place.there && <p className="quiet">{t("away")}</p>}
      {place?.trouble != null && <p className={css.trouble}>{say(place.trouble)}</p>}
      {place !== null && (
        <p className={`small quiet ${css.where}`} title={place.folder}>
          {t("where", { folder: place.folder })}
          {fact !== undefined && <span>{fact}</span>}
        </p>
      )}
      <div className={css.actions}>{children}</div>
    </section>
  );
}
