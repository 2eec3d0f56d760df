import { useTranslation } from "react-i18next";
import { writeMark } from "../../../../electron/domain/tests/written.ts";
import { useSay } from "../../../app/say.ts";
import { useLengths } from "../../station/lengths.ts";
import css from "./HeldPage.module.css";
import type { HeldDay } from "./types.ts";

type Mark = HeldDay["marks"][number];

/** What the attempts of a day came to. */
export function HeldMarks({ marks }: { readonly marks: readonly Mark[] }) {
  const { t } = useTranslation(["held", "common"]);
  const { lengths } = useLengths();
  const say = useSay();
  const rows = marks.map(({ test, variant, detail }) => {
    const { number, unit, note } = writeMark(test, detail, lengths);
    const measured = unit === "" || unit === "min:s" ? number : `${number} ${t(`common:unit.${unit}`)}`;
    const mark = [measured, note === undefined ? "" : say(note)].filter((part) => part !== "").join(", ");
    const way = variant === "full" || variant === "knee" ? ` (${t(`page.variant.${variant}`)})` : "";
    return { key: `${test} ${variant}`, test: t(`common:test.${test}.name`) + way, mark };
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
