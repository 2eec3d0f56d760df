import { useTranslation } from "react-i18next";
import css from "../../parts/sheets/LineList.module.css";
import { LineList } from "../../parts/sheets/LineList.tsx";
import { asSentence, type PreviewRow } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import { useSay } from "../../words/say.ts";
import { whoIn } from "./cells.tsx";

interface SomeRowsProps {
  /** The first rows of the preview; the desk puts the unusual ones first. */
  readonly rows: readonly PreviewRow[];
  /** Number of such rows in the whole sheet. */
  readonly count: number;
}

/** Lists the rows that are imported and still deserve a second look. */
export function Unusual({ rows, count }: SomeRowsProps) {
  const { t } = useTranslation("sheets");
  const say = useSay();
  const lines = rows.flatMap(({ line, unusual, cells }) =>
    unusual === null ? [] : [{ line, says: say(asSentence(unusual)), stands: whoIn(cells, t) }],
  );
  const more = lines.length < count ? t("rows.first", { shown: lines.length, of: count }) : undefined;
  return (
    <LineList title={t("unusual.title", { count })} lead={t("unusual.lead")} lines={lines} more={more} />
  );
}

/** Lists known athletes with other values in the sheet: the stored ones and the new ones. */
export function Changes({ rows, count }: SomeRowsProps) {
  const { t } = useTranslation("sheets");
  const fieldName = useFieldName();
  const lines = rows.flatMap(({ line, was, cells }) => {
    const says = Object.entries(was).map(([field, before]) => (
      <Change key={field} name={fieldName(field)} before={before} now={cells[field] ?? ""} />
    ));
    return says.length === 0 ? [] : [{ line, says, stands: whoIn(cells, t) }];
  });
  const more = lines.length < count ? t("rows.first", { shown: lines.length, of: count }) : undefined;
  return (
    <LineList title={t("changes.title", { count })} lead={t("changes.lead")} lines={lines} more={more} />
  );
}

interface ChangeProps {
  readonly name: string;
  readonly before: string;
  readonly now: string;
}

function Change({ name, before, now }: ChangeProps) {
  const { t } = useTranslation("sheets");
  return (
    <span className={css.change}>
      <strong>{name}: </strong>
      <del>{before === "" ? t("changes.empty") : before}</del> <ins>{now}</ins>{" "}
    </span>
  );
}
