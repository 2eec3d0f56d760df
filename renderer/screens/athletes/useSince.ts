import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useWriteDay } from "../../words/dates.ts";
import { useWriteChange } from "../../words/marks.ts";

/** A change and what it is from: the last test on its day, or a level by several. */
interface Since {
  readonly change: number;
  /** Number of earlier results. */
  readonly earlier: number;
  readonly date: string;
}

/** Says a change: since the last test, or from the level of several. */
export function useSince(test: TestCode, lengths: LengthUnit): (since: Since) => string {
  const { t } = useTranslation("athletes");
  const writeDay = useWriteDay();
  const writeChange = useWriteChange(test, lengths);
  return ({ change, earlier, date }) => {
    const values = { change: writeChange(change), date: writeDay(date), results: earlier };
    if (earlier > 1) return t(change === 0 ? "today.sameLevel" : "today.level", values);
    return t(change === 0 ? "today.same" : "today.last", values);
  };
}
