import { useTranslation } from "react-i18next";
import type { Interval } from "../../../../electron/domain/statistics/interval.ts";
import { leastTogether } from "../../../../electron/domain/statistics/shared.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../../../electron/domain/tests/registry.ts";
import type { Summary } from "../summary.ts";
import { useShortChange, useWrite, useWriteChange, writeNumber } from "../useWords.ts";
import css from "./Changes.module.css";
import { Test } from "./Test.tsx";

export type ChangeLine = Summary["changes"][number];
export type FoundLine = ChangeLine & { readonly found: NonNullable<ChangeLine["found"]> };

/** Returns true for a line of enough athletes. */
export function isFound(line: ChangeLine): line is FoundLine {
  return line.found !== null;
}

interface CellProps {
  readonly line: FoundLine;
  readonly lengths: LengthUnit;
}

/** Rounds a mean in grains to a tenth of the unit; a time to what its test's results have. */
function rounded(test: TestCode, grains: number): number {
  const { unit, perUnit } = protocolOf(test).grain;
  const step = unit === "s" ? Math.max(1, perUnit / 10) : perUnit / 10;
  return Math.round(grains / step) * step;
}

/** Formats the ends of a change's interval, without the unit: "+0.6 to +3". */
function useRange(lengths: LengthUnit): (test: TestCode, ends: Interval) => string {
  const { t } = useTranslation("summary");
  const short = useShortChange(lengths);
  return (test, { low, high }) => {
    const [from, to] = [rounded(test, low), rounded(test, high)];
    const end = (change: number) => (change === 0 ? writeNumber(test, 0, lengths) : short(test, change));
    return t("changes.range", { low: end(from), high: end(to) });
  };
}

/** Names the test, and over it the league where there may be several. */
export function LeagueTest({ line, whole }: { readonly line: ChangeLine; readonly whole: boolean }) {
  const { league, test, variant } = line;
  return (
    <span className={css.cell}>
      {whole && <span>{league}</span>}
      <Test test={test} variant={variant} />
    </span>
  );
}

/** Tells how many are compared, and why the others are not. */
export function Compared({ line }: { readonly line: ChangeLine }) {
  const { t } = useTranslation("summary");
  const left = (["unfinished", "firsts", "unlike"] as const).filter((each) => line[each] > 0);
  return (
    <span className={css.cell}>
      <strong>{line.pairs}</strong>
      {left.map((each) => (
        <span key={each} className="small quiet">
          {t(`changes.${each}`, { count: line[each] })}
        </span>
      ))}
    </span>
  );
}

export function MeanChange({ line, lengths }: CellProps) {
  const { t } = useTranslation("summary");
  const writeChange = useWriteChange(lengths);
  const range = useRange(lengths);
  const { mean, holds, learnt } = line.found;
  const amount = writeChange(line.test, rounded(line.test, mean.amount));
  const taken = rounded(line.test, learnt);
  return (
    <span className={css.cell}>
      {holds ? <strong>{amount}</strong> : <span>{amount}</span>}
      <span className="small">{range(line.test, mean)}</span>
      {taken !== 0 && (
        <span className="small quiet">{t("changes.learnt", { learnt: writeChange(line.test, taken) })}</span>
      )}
      <span className={holds ? "small strong" : "small quiet"}>
        {t(holds ? "changes.holds" : "changes.maybe")}
      </span>
    </span>
  );
}

/** Says why nothing is said of so few. */
export function TooFew({ line: { pairs } }: { readonly line: ChangeLine }) {
  const { t } = useTranslation("summary");
  const told = pairs === 0 ? t("changes.nobody") : t("changes.few", { count: pairs, least: leastTogether });
  return <span className={`small quiet ${css.cell}`}>{told}</span>;
}

export function TrueSpread({ line, lengths }: CellProps) {
  const { t } = useTranslation("summary");
  const write = useWrite(lengths);
  const { spread, assumed } = line.found;
  const { amount, low, high } = spread;
  const told = (grains: number) => write(line.test, rounded(line.test, grains));
  const range = { low: writeNumber(line.test, rounded(line.test, low), lengths), high: told(high) };
  return (
    <span className={css.cell}>
      <span>{rounded(line.test, amount) === 0 ? t("changes.noSpread") : told(amount)}</span>
      {rounded(line.test, high) > 0 && <span className="small">{t("changes.range", range)}</span>}
      {assumed && <span className="small quiet">{t("changes.assumed")}</span>}
    </span>
  );
}

export function ClearChanges({ line }: Pick<CellProps, "line">) {
  const { t } = useTranslation("summary");
  const { clearGains, clearLosses, byChance } = line.found;
  return (
    <span className={css.cell}>
      <span>{t("changes.clear", { gains: clearGains, losses: clearLosses })}</span>
      <span className="small quiet">
        {t("changes.byChance", {
          gains: Number(byChance.gains.toFixed(1)),
          losses: Number(byChance.losses.toFixed(1)),
        })}
      </span>
    </span>
  );
}

/** Tells the difference to the other leagues' mean change; nothing where there are too few others. */
export function AgainstOthers({ line, lengths }: CellProps) {
  const { t } = useTranslation("summary");
  const writeChange = useWriteChange(lengths);
  const range = useRange(lengths);
  const { others } = line.found;
  if (others === null) return <span className="small quiet">{t("changes.noOthers")}</span>;
  return (
    <span className={css.cell}>
      <span>{writeChange(line.test, rounded(line.test, others.amount))}</span>
      <span className="small">{range(line.test, others)}</span>
      <span className="small quiet">{t("changes.others", { others: others.pairs })}</span>
    </span>
  );
}
