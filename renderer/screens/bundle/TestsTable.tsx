import { useTranslation } from "react-i18next";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useVariantName } from "../../words/marks.ts";
import { BeforeAfter } from "./BeforeAfter.tsx";
import type { Preview } from "./preview.ts";
import css from "./WhatLeaves.module.css";

const names = ["ageBand", "category", "leagueSize", "quarter"] as const;

interface ToldHowProps {
  readonly test: Preview["tests"][number];
  readonly bundle: Preview;
}

/** Says how a test's marks are reported: the step and what is left out, or why none are reported. */
function ToldHow({ test, bundle: { k, kind } }: ToldHowProps) {
  const { t, i18n } = useTranslation(["bundle", "common"]);
  const { levels, step, parts } = test;
  if (levels === null || test.told === 0) {
    const enough = test.able >= 2 * k;
    const why = kind === "profiles" ? t("leaves.leftOut") : t("leaves.untold", { k });
    return <span className="small quiet">{enough ? why : t("leaves.few", { two: 2 * k })}</span>;
  }
  const list = new Intl.ListFormat(i18n.language, { type: "conjunction" });
  const hidden = names.filter((name) => levels[name] > 0).map((name) => t(`leaves.part.${name}`));
  const shown = names.filter((name) => levels[name] === 0).map((name) => t(`leaves.part.${name}`));
  return (
    <Stack as="span">
      <span>{stepsOf()}</span>
      <span className="small quiet">
        {t("leaves.told", { parts: list.format(shown) })}
        {hidden.length > 0 && ` ${t("leaves.hidden", { parts: list.format(hidden) })}`}
      </span>
    </Stack>
  );

  function stepsOf(): string {
    if (step === null || parts.every(({ low, high }) => low === null || high === null))
      return t("leaves.halves");
    const unit = t(`common:unit.${test.unit as "reps"}`, { defaultValue: test.unit });
    return step === 1 ? t("leaves.single", { unit }) : t("leaves.steps", { step, unit });
  }
}

/** Lists each test and variant: number of marks, their distribution before and after, and how they are reported. */
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
            <th scope="col">{t("leaves.how")}</th>
          </tr>
        </thead>
        <tbody>
          {bundle.tests.map((test) => (
            <TestLine key={`${test.test} ${test.variant}`} test={test} bundle={bundle} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function TestLine({ test, bundle }: { readonly test: Preview["tests"][number]; readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const variantName = useVariantName();
  return (
    <tr data-test={test.test}>
      <th scope="row">
        <Row as="span" gap={3} lines={0} align="center" wrap className={css.test}>
          <TestMark test={test.test} name="ability" />
          {test.variant !== "" && <span className="small quiet">{variantName(test.variant)}</span>}
          {test.better === "lower" && <span className="small quiet">{t("leaves.lowerIsBetter")}</span>}
        </Row>
      </th>
      <td data-kind="number">
        {test.told} <span className={`small quiet ${css.of}`}>{t("leaves.of", { count: test.able })}</span>
      </td>
      <td className={css.spread}>{test.told > 0 && <BeforeAfter test={test} />}</td>
      <td>
        <ToldHow test={test} bundle={bundle} />
      </td>
    </tr>
  );
}
