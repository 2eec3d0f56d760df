import { useTranslation } from "react-i18next";
import { TableHead } from "../../../parts/layout/TableHead.tsx";
import type { BeforeJoining } from "../types.ts";
import css from "./BothRecords.module.css";

type Facts = BeforeJoining["after"];
type Fact = "name" | "number" | "league" | "birthYear" | "category" | "board" | "share" | "guardianConsent";
const facts: readonly Fact[] = [
  ...(["name", "number", "league", "birthYear"] as const),
  ...(["category", "board", "share", "guardianConsent"] as const),
];

/** Both records and the one that comes of them, fact by fact. */
export function BothRecords({ before }: { readonly before: BeforeJoining }) {
  const { t } = useTranslation("steps");
  const { kept, gone, after } = before;
  const amounts = ["days", "attempts", "pastMarks"] as const;
  return (
    <table className={`small ${css.table}`}>
      <caption className="unseen">{t("join.both")}</caption>
      <TableHead corner heads={[t("join.head.kept"), t("join.head.gone"), t("join.head.after")]} />
      <tbody>
        {facts.map((fact) => (
          <tr key={fact}>
            <th scope="row">{t(`join.fact.${fact}`)}</th>
            <Fact of={kept} fact={fact} />
            <Fact of={gone} fact={fact} />
            <Fact of={after} fact={fact} />
          </tr>
        ))}
        {amounts.map((amount) => (
          <tr key={amount}>
            <th scope="row">{t(`join.fact.${amount}`)}</th>
            <td>{kept[amount]}</td>
            <td>{gone[amount]}</td>
            <td />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Fact({ of, fact }: { readonly of: Facts; readonly fact: Fact }) {
  const { t } = useTranslation(["steps", "athletes"]);
  const value = of[fact];
  if (fact === "board") return <td>{t(`athletes:board.${of.board}`)}</td>;
  if (typeof value === "boolean") return <td>{t(value ? "steps:yes" : "steps:no")}</td>;
  if (fact === "category" && of.category !== null)
    return <td>{t(`athletes:who.category.${of.category}`)}</td>;
  return <td>{value === null || value === "" ? "–" : value}</td>;
}
