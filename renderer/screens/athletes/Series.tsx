import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { Row } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { HistoryPlot } from "../../parts/plots/HistoryPlot.tsx";
import { PlotLegend } from "../../parts/plots/PlotLegend.tsx";
import { useVariantName } from "../../words/marks.ts";
import { News } from "./News.tsx";
import css from "./Series.module.css";
import { SeriesTable } from "./SeriesTable.tsx";
import type { AthletePage, Series } from "./types.ts";

interface AllSeriesProps {
  readonly athlete: AthletePage;
  readonly lengths: LengthUnit;
}

/** Shows each test over time: the newest mark's verdict, the plot, and the same in a table. */
export function AllSeries({ athlete: { series }, lengths }: AllSeriesProps) {
  const { t } = useTranslation("athletes");
  const without = testCodes.filter((test) => series.every((each) => each.test !== test));
  return (
    <>
      <Section title={t("series.title")}>
        {series.length > 0 && <PlotLegend />}
        {without.length > 0 && (
          <Row gap={4} lines={2} align="center" wrap>
            <span>{t(series.length === 0 ? "series.none" : "series.noneOf")}</span>
            {series.length > 0 &&
              without.map((test) => <TestMark key={test} test={test} size="small" name="ability" />)}
          </Row>
        )}
      </Section>
      {series.map((each) => (
        <OneSeries key={`${each.test} ${each.variant}`} series={each} lengths={lengths} />
      ))}
    </>
  );
}

function OneSeries({ series, lengths }: { readonly series: Series; readonly lengths: LengthUnit }) {
  const { t } = useTranslation("athletes");
  const variantName = useVariantName();
  const { test, variant, points, noise, error } = series;
  return (
    <Section
      title={
        <span className={css.title}>
          <TestMark test={test} name="ability" />
          {variant !== "" && <span className={`small quiet ${css.quiet}`}>{variantName(variant)}</span>}
        </span>
      }
    >
      <News series={series} lengths={lengths} />
      <div className={css.halves}>
        <HistoryPlot test={test} points={points} noise={noise} size="page" lengths={lengths} />
        <div className={css.table}>
          <SeriesTable series={series} lengths={lengths} />
          {noise !== null && (
            <p className={`small quiet ${css.quiet}`}>
              {error.assumed ? t("series.assumed") : t("series.learned", { count: error.pairs })}{" "}
              <Link href="/noise">{t("series.aboutNoise")}</Link>
            </p>
          )}
        </div>
      </div>
    </Section>
  );
}
