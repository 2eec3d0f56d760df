import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import type { LengthUnit, Written } from "../../../electron/domain/tests/protocol.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { type Column, column, DataTable } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Beside } from "../../parts/marks/Beside.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { PlaceBand } from "../../parts/marks/PlaceBand.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { HistoryPlot } from "../../parts/plots/HistoryPlot.tsx";
import { PlotLegend } from "../../parts/plots/PlotLegend.tsx";
import { useWriteDay } from "../../words/dates.ts";
import { useMarkText, useUnitWord, useVariantName, useWriteChange } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import css from "./Series.module.css";
import type { AthletePage, Series } from "./types.ts";
import { useSince } from "./useSince.ts";

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
              {error.changes === 0
                ? t("series.chance.assumed")
                : t("series.chance.learned", { count: error.changes })}{" "}
              <Link href="/noise">{t("series.aboutNoise")}</Link>
            </p>
          )}
        </div>
      </div>
    </Section>
  );
}

interface NewsProps {
  readonly series: Series;
  readonly lengths: LengthUnit;
}

type Point = Series["points"][number];

/** Shows the newest mark with its change and its chance, against the best, the level by all marks, and among others. */
function News({ series: { test, points, level, place, placed }, lengths }: NewsProps) {
  const { t } = useTranslation(["athletes", "station"]);
  const say = useSay();
  const writeDay = useWriteDay();
  const since = useSince(test, lengths);
  const verdictOf = useVerdict();
  const unitWord = useUnitWord();
  const [newest, last] = [points.at(-1), points.at(-2)];
  if (newest === undefined) return null;
  const { written, standing, change, earlier, today, date } = newest;
  return (
    <div className={css.halves}>
      <div className={css.news}>
        <BigNumber
          size="sum"
          label={today ? t("series.today") : writeDay(date)}
          number={written.number}
          unit={unitWord(written.unit, written.number) || undefined}
          note={written.note === undefined ? undefined : say(written.note)}
        />
        <Stack gap={1} align="start">
          <Tag tone={standing === "best" ? "go" : "quiet"}>{t(`station:standing.${standing}`)}</Tag>
          {last === undefined && <p>{t("series.first")}</p>}
          {last !== undefined && change !== null && (
            <>
              <p>{since({ change, earlier, date: last.date })}</p>
              {change !== 0 && (
                <p>
                  <strong>{verdictOf(newest)}</strong>
                </p>
              )}
              {level !== null && <LevelNow level={level} />}
            </>
          )}
          <Beside beside={newest.beside} />
        </Stack>
      </div>
      {placed && <PlaceBand place={place} />}
    </div>
  );
}

/** Says what the athlete is good for by all marks, and how it moves. */
function LevelNow({ level: { written, within, speed } }: { readonly level: NonNullable<Series["level"]> }) {
  const { t } = useTranslation("athletes");
  const markText = useMarkText();
  const show = useShowNumber();
  const now = t("series.level.now", { level: markText(written), within: show(within.number) });
  const [moved, low, high] = [speed?.perMonth, speed?.low, speed?.high].map((each) =>
    show((each?.number ?? "").replace("-", "−")),
  );
  const moves = speed === null ? "" : t(`series.level.${speed.direction}`, { speed: moved, low, high });
  return <p>{`${now} ${moves}`.trimEnd()}</p>;
}

/**
 * Formats the verdict on a change with its chance in whole percent: rounded down, so that the words never claim more
 * than the numbers.
 */
function useVerdict(): (point: Pick<Point, "verdict" | "chanceReal" | "change">) => string {
  const { t } = useTranslation("athletes");
  return ({ verdict, chanceReal, change }) => {
    if (verdict === null || chanceReal === null || change === null) return "";
    const values = { chance: Math.min(99, Math.floor(chanceReal * 100)) };
    if (verdict !== "noise") return t(`series.verdict.${verdict}`, values);
    return t(change > 0 ? "series.noise.gain" : "series.noise.loss", values);
  };
}

interface SeriesTableProps {
  readonly series: Series;
  readonly lengths: LengthUnit;
}

type MarkRow = Series["points"][number] & { readonly place: number };

/** Lists the marks of one test, newest first: each against the level by those before it, and against the best of them. */
function SeriesTable({ series: { test, points }, lengths }: SeriesTableProps) {
  const { t } = useTranslation(["athletes", "common"]);
  const testWord = useTestWords();
  const columns = useColumns(useWriteChange(test, lengths), points[0]?.written.unit ?? "");
  return (
    <DataTable<MarkRow>
      caption={t("series.table", { test: testWord(test, "ability") })}
      rows={points.map((point, place) => ({ ...point, place })).toReversed()}
      rowKey={({ place }) => place}
      columns={columns}
      maxHeight="20rem"
    />
  );
}

function useColumns(writeChange: (change: number) => string, unit: Written["unit"]): Column<MarkRow>[] {
  const { t } = useTranslation(["athletes", "station", "common"]);
  const writeDay = useWriteDay();
  const word = useUnitWord()(unit);
  function beside(standing: MarkRow["standing"], source: MarkRow["source"]): string {
    const stands = standing === "below" ? [] : [t(`series.standing.${standing}`)];
    return [...stands, ...(source === "imported" ? [t("series.sheet")] : [])].join(", ");
  }
  return [
    column("date", t("series.column.date"), "8.5rem", ({ date, today }) =>
      today ? t("series.today") : writeDay(date),
    ),
    column(
      "mark",
      word === "" ? t("series.column.mark") : t("series.column.markIn", { unit: word }),
      "9.5rem",
      ({ written: { number }, standing, source }) => (
        <>
          <strong>{number}</strong>
          <span className={`small quiet ${css.quiet}`}> {beside(standing, source)}</span>
        </>
      ),
    ),
    column("says", t("series.column.says"), "auto", ({ change, verdict }) => {
      if (change === null || verdict === null) return "–";
      const said = change === 0 ? t("series.same") : writeChange(change);
      return `${said}, ${t(`series.short.${verdict}`)}`;
    }),
  ];
}
