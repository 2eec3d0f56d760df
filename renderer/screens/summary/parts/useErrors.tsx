import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { protocolOf } from "../../../../electron/domain/tests/registry.ts";
import { sentence } from "../../../../electron/domain/words.ts";
import { column } from "../../../parts/layout/DataTable.tsx";
import { Tag } from "../../../parts/marks/Tag.tsx";
import { useSay } from "../../../words/say.ts";
import type { Summary, SummaryPart } from "../summary.ts";
import css from "./Everybody.module.css";
import { Test } from "./Test.tsx";

type Line = Summary["errors"][number];

/** Lists the typical error that judged each test's changes, and its source. */
export function useErrors(summary: Summary): SummaryPart<Line> {
  const { t } = useTranslation(["summary", "common", "noise"]);
  const say = useSay();
  function amount({ test, fixed, share }: Line): string {
    const { perUnit, unit } = protocolOf(test).grain;
    const percent = Number((share * 100).toFixed(1));
    const shown = Number((fixed / perUnit).toFixed(2));
    return t("errors.parts", { amount: shown, unit: unit === "s" ? "s" : t(`common:unit.${unit}`), percent });
  }
  return {
    key: "errors",
    title: t("errors.title"),
    lead: t("errors.lead"),
    aside: <Link href="/noise">{t("noise:link")}</Link>,
    columns: [
      column("test", t("column.test"), "10rem", ({ test }) => <Test test={test} />),
      column("amount", t("errors.amount"), "13.5rem", (line) => <strong>{amount(line)}</strong>),
      column("from", t("errors.from"), "15rem", ({ assumed, pairs }) => (
        <Tag>{assumed ? t("errors.assumed") : t("errors.pairs", { count: pairs })}</Tag>
      )),
      column("start", t("errors.start"), "auto", ({ test }) => (
        <span className={css.wrap}>{say(sentence(`test.${test}.noiseSource`))}</span>
      )),
    ],
    lines: summary.errors,
    lineKey: ({ test }) => test,
    rowHeight: 72,
    empty: "",
    paperWidths: [18, 20, 22, 40],
  };
}
