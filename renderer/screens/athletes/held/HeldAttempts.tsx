import { useTranslation } from "react-i18next";
import { protocolOf } from "../../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { TableHead } from "../../../parts/layout/TableHead.tsx";
import { faceOf, useTexts } from "../../../tests/registry.ts";
import { useWriteSeen } from "../../../tests/seen.ts";
import { useWriteTime } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import css from "./HeldPage.module.css";
import type { HeldDay } from "./types.ts";
import { useWayInBrackets } from "./useWayInBrackets.ts";

type Attempt = HeldDay["attempts"][number];

/** Lists every attempt in the order of entry, void ones too. */
export function HeldAttempts({ attempts }: { readonly attempts: readonly Attempt[] }) {
  const { t } = useTranslation("held");
  return (
    <>
      <h3>{t("page.attempts")}</h3>
      {attempts.length === 0 ? (
        <p>{t("page.noAttempts")}</p>
      ) : (
        <table className={css.table}>
          <TableHead
            heads={(["time", "test", "seen", "how", "by"] as const).map((column) => t(`page.${column}`))}
          />
          <tbody>
            {attempts.map((attempt) => (
              <Row key={attempt.id} attempt={attempt} />
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

function Row({ attempt }: { readonly attempt: Attempt }) {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const writeTime = useWriteTime();
  const { at, test, variant, source, entered_by } = attempt;
  const way = useWayInBrackets()(variant);
  return (
    <tr>
      <td>{writeTime(at)}</td>
      <th scope="row">
        {testWord(test, "name")}
        {way}
      </th>
      <td>
        {useSeen(attempt).map((line) => (
          <span key={line} className={css.line}>
            {line}
          </span>
        ))}
      </td>
      <td>{t(`page.source.${source}`)}</td>
      <td>{entered_by}</td>
    </tr>
  );
}

/** Says what was seen, what was noted, and whether the attempt was voided. */
function useSeen({ test, seen, note, replaces, void: ended }: Attempt): string[] {
  const { t } = useTranslation("held");
  const { lengths } = useLengthUnit();
  const textsOf = useTexts();
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const besides = faceOf(test).besides?.(textsOf(test), protocolOf(test).attempt.parse(seen)) ?? null;
  return [
    writeSeen(test, seen, lengths),
    ...(besides === null ? [] : [besides]),
    ...(note === "" ? [] : [t("page.note", { note })]),
    ...(replaces === null ? [] : [t("page.corrects")]),
    ...(ended === null
      ? []
      : [t("page.void", { reason: ended.reason, by: ended.by, time: writeTime(ended.at) })]),
  ];
}
