import { useTranslation } from "react-i18next";
import css from "./HeldPage.module.css";
import type { Held } from "./types.ts";

/** Shows who the athlete is, and their consents. */
export function HeldAbout({ held: { person, consents } }: { readonly held: Held }) {
  const { t } = useTranslation("held");
  const yesNo = (yes: boolean) => t(yes ? "page.yes" : "page.no");
  const none = t("page.none");
  const category = person.category === null ? none : t(`page.${person.category}`);
  return (
    <div className={css.halves}>
      <Facts
        title={t("page.who")}
        facts={[
          [t("page.name"), person.name],
          [t("page.league"), person.league],
          [t("page.number"), person.number === "" ? none : person.number],
          [t("page.birthYear"), String(person.birth_year ?? none)],
          [t("page.category"), category],
        ]}
      />
      <Facts
        title={t("page.agreed")}
        facts={[
          [t("page.board"), t(`page.boardAs.${consents.board}`)],
          [t("page.share"), yesNo(consents.share)],
          [t("page.guardian"), yesNo(consents.guardian_consent)],
          [t("page.asked"), yesNo(consents.asked_at_the_table)],
        ]}
      />
    </div>
  );
}

interface FactsProps {
  readonly title: string;
  readonly facts: readonly (readonly [string, string])[];
}

function Facts({ title, facts }: FactsProps) {
  return (
    <section>
      <h2>{title}</h2>
      <dl className={css.facts}>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
