import { useTranslation } from "react-i18next";
import { Stack } from "../../parts/flow/Stack.tsx";
import { TableHead } from "../../parts/layout/TableHead.tsx";
import type { Preview } from "./preview.ts";
import css from "./RiskReport.module.css";

/** Compares, in figures and plain words, a neighbour's success with the exact marks and with the bundle. */
export function RiskReport({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const { before, after, kind, k } = bundle;
  return (
    <Stack gap={4}>
      <Stack as="p" gap={2} className="measure">
        {t("risk.who")}
      </Stack>
      <table className={css.table}>
        <caption className="unseen">{t("risk.title")}</caption>
        <TableHead corner heads={[t("risk.before"), t("risk.after")]} />
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
          {before.hiddenMarks > 0 && (
            <Line
              head={t("risk.hidden")}
              before={t("risk.ofRows", { count: before.hiddenFound, all: before.hiddenMarks })}
              after={t("risk.ofRows", { count: after.hiddenFound, all: after.hiddenMarks })}
            />
          )}
        </tbody>
      </table>
      <Stack gap={2} className="measure">
        <p>{t(`risk.done.${kind}`, { k })}</p>
        <p className="quiet">{t("risk.notPromised", { less: k - 1 })}</p>
      </Stack>
    </Stack>
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
