import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { Row } from "../../../parts/flow/Stack.tsx";
import { useShowNumber } from "../../../words/numbers.ts";
import type { SummaryMark, TestCell } from "../summary.ts";
import { useShortChange, useVariant, writeNumber } from "../useWords.ts";
import css from "./MarkCell.module.css";

interface MarkCellProps {
  readonly cell: TestCell;
  readonly lengths: LengthUnit;
  /** short: the mark and the verdict on its change. full: the last test's mark and the change as well. */
  readonly detail: "short" | "full";
  /** True if the name already says why there is no mark. */
  readonly quiet?: boolean;
}

/** Shows one athlete's marks of a test in two or three short lines. */
export function MarkCell({ cell, lengths, detail, quiet = false }: MarkCellProps) {
  const { t } = useTranslation("summary");
  const complete = cell.marks.filter(({ mark }) => mark.state === "complete");
  if (cell.gap !== null)
    return <span className={`small ${css.gap}`}>{quiet ? "–" : t(`why.${cell.gap.kind}`)}</span>;
  return (
    <Row as="span" gap={4} lines={0} wrap>
      {complete.map((mark) => (
        <Lines key={mark.variant} test={cell.test} mark={mark} lengths={lengths} detail={detail} />
      ))}
    </Row>
  );
}

interface LinesProps extends Pick<MarkCellProps, "lengths" | "detail"> {
  readonly test: TestCode;
  readonly mark: SummaryMark;
}

function Lines({ test, mark: told, lengths, detail }: LinesProps) {
  const { t } = useTranslation("summary");
  const writeChange = useShortChange(lengths);
  const variant = useVariant();
  const show = useShowNumber();
  const { mark, news } = told;
  if (mark.state !== "complete" || news === null) return null;
  const { standing, earlier, level, change, verdict } = news;
  const best = standing === "best" && (
    <span className={`small strong ${css.best}`}>{t("standing.best")}</span>
  );
  const way = told.variant === "knee" && <span className={css.soft}>{variant(told.variant)}</span>;
  const worth = verdict === null ? t("everybody.first") : t(`verdict.${verdict}`);
  const full = detail === "full" && level !== null && change !== null;
  return (
    <span className={css.lines}>
      <span className={css.line}>
        <strong className={css.mark}>{show(writeNumber(test, mark.value, lengths))}</strong>
        {way}
        {full ? (
          <span className={css.soft}>
            {t(earlier > 1 ? "everybody.level" : "everybody.was", {
              value: writeNumber(test, level, lengths),
            })}
          </span>
        ) : (
          best
        )}
      </span>
      {full && (
        <span className={css.line}>
          {writeChange(test, change)}
          {best}
        </span>
      )}
      <span className={css.line} data-worth={verdict ?? "first"}>
        <span className={css.worth}>{worth}</span>
      </span>
    </span>
  );
}
