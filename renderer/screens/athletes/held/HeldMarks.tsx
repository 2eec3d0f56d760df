import { useTranslation } from "react-i18next";
import { writeMark } from "../../../../electron/domain/tests/written.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { useMarkText } from "../../../words/marks.ts";
import { useSay } from "../../../words/say.ts";
import css from "./HeldPage.module.css";
import type { HeldDay } from "./types.ts";
import { useWayInBrackets } from "./useWayInBrackets.ts";

type Mark = HeldDay["marks"][number];

/** Lists the marks of a day's attempts. */
export function HeldMarks({ marks }: { readonly marks: readonly Mark[] }) {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const say = useSay();
  const markText = useMarkText();
  const wayOf = useWayInBrackets();
  const rows = marks.map(({ test, variant, detail }) => {
    const written = writeMark(test, detail, lengths);
    const { note } = written;
    const said = [markText(written), note === undefined ? "" : say(note)];
    const mark = said.filter((part) => part !== "").join(", ");
    return { key: `${test} ${variant}`, test: testWord(test, "name") + wayOf(variant), mark };
  });
  return (
    <>
      <h3>{t("page.marks")}</h3>
      <table className={css.table}>
        <thead>
          <tr>
            <th scope="col">{t("page.test")}</th>
            <th scope="col">{t("page.mark")}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, test, mark }) => (
            <tr key={key}>
              <th scope="row">{test}</th>
              <td className="strong">{mark}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
