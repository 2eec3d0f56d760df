import { useTranslation } from "react-i18next";
import { TestMark } from "../../parts/TestMark.tsx";
import type { Preview } from "./preview.ts";
import { Spread } from "./Spread.tsx";
import css from "./WhatLeaves.module.css";
import { useVariant } from "./words.ts";

/** One line a test and variant: how many marks, their quartiles, and how they lie. */
export function TestsTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className={css.wide} aria-label={t("leaves.tests")} tabIndex={0}>
      <table className={css.tests}>
        <caption className="unseen">{t("leaves.tests")}</caption>
        <thead>
          <tr>
            <th scope="col">{t("leaves.test")}</th>
            <th scope="col" data-kind="number">
              {t("leaves.marks")}
            </th>
            <th scope="col" className={css.spread}>
              {t("leaves.spread")}
            </th>
            <th scope="col" data-kind="number">
              {t("leaves.lower")}
            </th>
            <th scope="col" data-kind="number">
              {t("leaves.median")}
            </th>
            <th scope="col" data-kind="number">
              {t("leaves.upper")}
            </th>
            <th scope="col">{t("leaves.unit")}</th>
          </tr>
        </thead>
        <tbody>
          {bundle.summaries.map((summary) => (
            <TestLine key={`${summary.test} ${summary.variant}`} summary={summary} rows={bundle.rows} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface TestLineProps {
  readonly summary: Preview["summaries"][number];
  readonly rows: Preview["rows"];
}

function TestLine({ summary, rows }: TestLineProps) {
  const { t } = useTranslation("bundle");
  const variantOf = useVariant();
  const { test, variant, better, n, lower, median, upper, unit } = summary;
  const marks = rows.filter((row) => row.test === test && row.variant === variant).map(({ mark }) => mark);
  return (
    <tr data-test={test}>
      <th scope="row">
        <span className={css.test}>
          <TestMark test={test} name="ability" />
          {variant !== "" && <span className={css.quiet}>{variantOf(variant)}</span>}
          {better === "lower" && <span className={css.quiet}>{t("leaves.lowerIsBetter")}</span>}
        </span>
      </th>
      <td data-kind="number">{n}</td>
      <td className={css.spread}>
        <Spread marks={marks} lower={lower} median={median} upper={upper} />
      </td>
      {median === null ? (
        <td colSpan={3} data-kind="few" className={css.quiet}>
          {t("leaves.few")}
        </td>
      ) : (
        <>
          <td data-kind="number">{lower}</td>
          <td data-kind="number">{median}</td>
          <td data-kind="number">{upper}</td>
        </>
      )}
      <td className={css.quiet}>{unit}</td>
    </tr>
  );
}
