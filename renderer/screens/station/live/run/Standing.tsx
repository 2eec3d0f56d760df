import { useTranslation } from "react-i18next";
import type { Told } from "../../types.ts";
import css from "./Standing.module.css";

type StandingName = NonNullable<Told["news"]>["standing"];

const paths: Readonly<Record<StandingName, string>> = {
  first: "M5 3v18M5 12h15",
  best: "M4 15 12 7l8 8",
  equal: "M4 9h16M4 15h16",
  below: "M4 9l8 8 8-8",
};

/** Shows a mark's standing among the athlete's own as a shape and a word; a best is on floor tape. */
export function Standing({ standing }: { readonly standing: StandingName }) {
  const { t } = useTranslation("station");
  return (
    <span className={`small strong ${css.standing}`} data-standing={standing}>
      <StandingSign standing={standing} />
      {t(`standing.${standing}`)}
    </span>
  );
}

/** Draws a shape per standing, so that one glance is enough. */
export function StandingSign({ standing }: { readonly standing: StandingName }) {
  return (
    <svg className={css.sign} viewBox="0 0 24 24" data-standing={standing} aria-hidden="true">
      <path d={paths[standing]} />
    </svg>
  );
}
