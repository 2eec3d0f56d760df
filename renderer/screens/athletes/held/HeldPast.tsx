import { useTranslation } from "react-i18next";
import { protocolOf } from "../../../../electron/domain/tests/registry.ts";
import { writeMark } from "../../../../electron/domain/tests/written.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { useWriteDay } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { useMarkText } from "../../../words/marks.ts";
import css from "./HeldPage.module.css";
import type { Held } from "./types.ts";
import { useWayInBrackets } from "./useWayInBrackets.ts";

type Past = Held["past_marks"][number];

/** Lists the marks from a sheet of past results; nothing where there are none. */
export function HeldPast({ marks }: { readonly marks: readonly Past[] }) {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const writeDay = useWriteDay();
  const markText = useMarkText();
  const wayOf = useWayInBrackets();
  if (marks.length === 0) return null;
  function written({ test, value }: Past): string {
    const grains = Math.round(value * protocolOf(test).grain.perUnit);
    return markText(writeMark(test, { state: "complete", value: grains }, lengths));
  }
  return (
    <section className={css.day}>
      <h2>{t("page.past")}</h2>
      <table className={css.table}>
        <thead>
          <tr>
            {(["date", "test", "mark"] as const).map((column) => (
              <th key={column} scope="col">
                {t(`page.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {marks.map((mark) => (
            <tr key={`${mark.date} ${mark.protocol}`}>
              <td>{writeDay(mark.date)}</td>
              <th scope="row">
                {testWord(mark.test, "name")}
                {wayOf(mark.variant)}
              </th>
              <td className="strong">{written(mark)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
