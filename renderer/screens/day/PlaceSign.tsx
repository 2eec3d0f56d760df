import { useTranslation } from "react-i18next";
import css from "./Floor.module.css";

export type PlaceInTest = "done" | "waiting" | "later" | "leftOut";

const shapes: Record<PlaceInTest, string> = {
  done: "m4 12.5 5.5 5.5L20 6",
  waiting: "M5 4v16l15-8z",
  later: "M12 10.5v3",
  leftOut: "M5 12h14",
};

/** Where somebody stands with one test: a tick, an arrow for the next one, a dot, or a dash. */
export function PlaceSign({ place }: { readonly place: PlaceInTest }) {
  const { t } = useTranslation("day");
  return (
    <svg
      className={css.sign}
      viewBox="0 0 24 24"
      data-place={place}
      role="img"
      aria-label={t(`floor.${place}`)}
    >
      <path d={shapes[place]} />
    </svg>
  );
}
