import { useState } from "react";
import { useTranslation } from "react-i18next";
import { fold } from "../../../electron/domain/people/fold.ts";
import { TextField } from "../../parts/controls/TextField.tsx";
import { ChoiceLink, ChoiceList } from "../../parts/layout/ChoiceList.tsx";
import css from "./Cards.module.css";
import { type CardPerson, nameOf, type People, pathOf, type WhichCards } from "./which.ts";

interface ChooseCardsProps {
  readonly people: People;
  /** The day in the address. */
  readonly day: number | "current";
  readonly which: WhichCards;
}

/** Selects everybody's cards, a league's, or one athlete's. */
export function ChooseCards({ people, day, which }: ChooseCardsProps) {
  const { t } = useTranslation("cards");
  const chosen = nameOf(which);
  const choices: [WhichCards, string][] = [
    [{ kind: "all" }, t("which.all", { count: people.people.length })],
    ...people.leagues.map(({ id, name, count }): [WhichCards, string] => [
      { kind: "league", leagueId: id },
      t("which.league", { league: name, count }),
    ]),
  ];
  return (
    <nav aria-label={t("which.label")} className={css.choice}>
      <ChoiceList>
        {choices.map(([each, label]) => (
          <ChoiceLink key={nameOf(each)} to={pathOf(day, each)} current={nameOf(each) === chosen}>
            {label}
          </ChoiceLink>
        ))}
      </ChoiceList>
      <FindOne people={people.people} day={day} chosen={chosen} />
    </nav>
  );
}

interface FindOneProps {
  readonly people: readonly CardPerson[];
  readonly day: number | "current";
  readonly chosen: string;
}

/** Finds an athlete by any part of a name, a number or a bib. */
function FindOne({ people, day, chosen }: FindOneProps) {
  const { t } = useTranslation("cards");
  const [typed, setTyped] = useState("");
  const words = fold(typed)
    .split(" ")
    .filter((word) => word !== "");
  const found = people.filter((person) => {
    const text = `${fold(person.name)} ${person.number} ${person.bib ?? ""}`;
    return words.every((word) => text.includes(word));
  });
  return (
    <div className={css.find}>
      <TextField type="search" label={t("which.find")} value={typed} onChange={setTyped} />
      {found.length === 0 && <p>{t("which.nobody")}</p>}
      <ChoiceList className={css.people}>
        {found.map((person) => {
          const which: WhichCards = { kind: "athlete", athleteId: person.athleteId };
          return (
            <ChoiceLink key={person.athleteId} to={pathOf(day, which)} current={nameOf(which) === chosen}>
              <Label person={person} />
            </ChoiceLink>
          );
        })}
      </ChoiceList>
    </div>
  );
}

/** Name, number and bib. A name written from right to left turns nothing round but itself. */
function Label({ person: { name, number, bib } }: { readonly person: CardPerson }) {
  const { t } = useTranslation("cards");
  const rest = [number, bib === null ? "" : t("which.bib", { bib })].filter((part) => part !== "");
  return (
    <span>
      <bdi>{name}</bdi>
      {rest.map((part) => `, ${part}`).join("")}
    </span>
  );
}
