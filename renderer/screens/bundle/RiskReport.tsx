import { useTranslation } from "react-i18next";
import type { Preview } from "./preview.ts";
import css from "./RiskReport.module.css";

/** What a neighbour could find out without all this, and what is left to find out: figures and plain words. */
export function RiskReport({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const { before, after, kind, k } = bundle;
  return (
    <div className={css.report}>
      <p className={css.words}>{t("risk.who")}</p>
      <table className={css.table}>
        <caption className="unseen">{t("risk.title")}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{t("risk.before")}</th>
            <th scope="col">{t("risk.after")}</th>
          </tr>
        </thead>
        <tbody>
          <Line
            head={t("risk.certain")}
            before={t("risk.ofBibs", { count: before.bibsCertain, all: before.bibs })}
            after={t("risk.ofBibs", { count: after.bibsCertain, all: after.bibs })}
          />
          <Line
            head={t(`risk.alone.${kind}`)}
            before={t("risk.ofRows", { count: before.unique, all: before.rows })}
            after={t("risk.ofRows", { count: after.unique, all: after.rows })}
          />
          <Line
            head={t("risk.guess")}
            before={before.likeliestGuess >= 1 ? t("risk.sure") : oneIn(before.likeliestGuess)}
            after={oneIn(after.likeliestGuess)}
          />
          <Line
            head={t("risk.average")}
            before={t("risk.ofHundred", { count: hundredths(before.matchedOnAverage) })}
            after={t("risk.ofHundred", { count: hundredths(after.matchedOnAverage) })}
          />
        </tbody>
      </table>
      <div className={css.words}>
        <p>{t(`risk.done.${kind}`, { k })}</p>
        <p className={css.quiet}>{t("risk.notPromised", { less: k - 1 })}</p>
      </div>
    </div>
  );

  function oneIn(chance: number): string {
    return t("risk.oneIn", { count: Math.round(1 / chance) });
  }
}

function hundredths(share: number): number {
  return Math.round(100 * share);
}

interface LineProps {
  readonly head: string;
  readonly before: string;
  readonly after: string;
}

function Line({ head, before, after }: LineProps) {
  return (
    <tr>
      <th scope="row">{head}</th>
      <td>{before}</td>
      <td data-after="true">{after}</td>
    </tr>
  );
}
