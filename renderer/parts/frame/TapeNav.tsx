import type { CSSProperties } from "react";
import { useTranslation } from "react-i18next";
import { Link, useLocation } from "wouter";
import { useKeys } from "../../app/keys.ts";
import { isAt, type Place, places } from "../../app/places.ts";
import { mayOpen, useStanding } from "../../app/standing.tsx";
import { TestMark } from "../marks/TestMark.tsx";
import css from "./TapeNav.module.css";

/** The navigation: a measuring tape that starts at 0, where each numeral is also the screen's key. */
export function TapeNav() {
  const { t } = useTranslation("common");
  const [path, go] = useLocation();
  const { post } = useStanding();
  // Each screen keeps its numeral, even where it is the only one.
  const shown = places
    .map((place, index) => ({ place, index }))
    .filter(({ place }) => mayOpen(post, place.path));
  const withKey = shown.filter(({ index }) => index < 10);
  useKeys(Object.fromEntries(withKey.map(({ place, index }) => [`Alt+${index}`, () => go(place.path)])));
  return (
    <nav aria-label={t("frame.places")}>
      <ol className={css.tape} style={{ "--places": places.length } as CSSProperties}>
        {shown.map(({ place, index }) => (
          <li key={place.key}>
            <Stop place={place} index={index} current={isAt(path, place)} />
          </li>
        ))}
      </ol>
    </nav>
  );
}

/** The same tape without a day: blank, with the name printed on it. */
export function BareTape() {
  const { t } = useTranslation("common");
  return (
    <div className={css.bare}>
      <span className={css.print}>{t("name")}</span>
    </div>
  );
}

interface StopProps {
  readonly place: Place;
  readonly index: number;
  readonly current: boolean;
}

function Stop({ place, index, current }: StopProps) {
  const { t } = useTranslation("common");
  return (
    <Link
      className={css.stop}
      href={place.path}
      aria-current={current ? "page" : undefined}
      aria-keyshortcuts={index < 10 ? `Alt+${index}` : undefined}
    >
      <span className={css.numeral} aria-hidden="true">
        {index}
      </span>
      <span className={css.label}>
        {place.test === null ? (
          t(`place.${place.key}`)
        ) : (
          <TestMark test={place.test} size="small" name="ability" />
        )}
      </span>
    </Link>
  );
}
