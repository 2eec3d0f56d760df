import { Barcode } from "./Barcode.tsx";
import css from "./Cut.module.css";
import type { PaperSize } from "./pages.ts";
import type { BibToPrint } from "./which.ts";

interface BibPageProps {
  readonly bibs: readonly BibToPrint[];
  readonly size: PaperSize;
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
