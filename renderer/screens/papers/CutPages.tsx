import { useTranslation } from "react-i18next";
import type { Paper } from "../../app/saving.ts";
import { Barcode } from "./Barcode.tsx";
import css from "./Cut.module.css";
import type { BibToPrint, PaperPerson } from "./which.ts";

interface BibPageProps {
  readonly bibs: readonly BibToPrint[];
  readonly size: Paper;
}

/** Bib numbers, two on a sheet: as large as the paper lets them be. */
export function BibPage({ bibs, size }: BibPageProps) {
  return (
    <article className={`${css.bibs} print-sheet`} data-paper={size}>
      {bibs.map(({ bib, league }) => (
        <section key={bib} className={css.bib}>
          <p className={`one-line ${css.league}`}>{league}</p>
          <p className={css.number} data-digits={String(bib).length}>
            {bib}
          </p>
          <Barcode text={String(bib)} />
        </section>
      ))}
    </article>
  );
}

interface BadgePageProps {
  readonly people: readonly PaperPerson[];
  readonly size: Paper;
}

/** Badges to cut out. Whoever did not agree to the name gets a line to write on, or to leave empty. */
export function BadgePage({ people, size }: BadgePageProps) {
  const { t } = useTranslation("papers");
  return (
    <article className={`${css.badges} print-sheet`} data-paper={size}>
      {people.map(({ athleteId, name, number, league, bib, code }) => (
        <section key={athleteId} className={css.badge}>
          <p className={`one-line ${css.league}`}>{league}</p>
          <p className={css.name} data-long={(name?.length ?? 0) > 18}>
            {name ?? <span className={css.write} />}
          </p>
          <p className={css.numbers}>
            {number !== "" && <span>{t("badge.number", { number })}</span>}
            {bib !== null && <strong>{t("badge.bib", { bib })}</strong>}
          </p>
          <Barcode text={code} />
        </section>
      ))}
    </article>
  );
}
