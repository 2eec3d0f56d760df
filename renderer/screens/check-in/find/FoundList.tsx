import { useTranslation } from "react-i18next";
import { Tag } from "../../../parts/marks/Tag.tsx";
import type { FoundPerson } from "../people.ts";
import css from "./FoundList.module.css";
import type { useSearch } from "./useSearch.ts";

interface FoundListProps {
  /** The search box's id, from which the list and its options get theirs. */
  readonly id: string;
  readonly query: string;
  readonly search: ReturnType<typeof useSearch>;
  /** Index of the one that Enter opens. */
  readonly marked: number;
  readonly openId: number | null;
  readonly onOpen: (athleteId: number) => void;
}

/** Lists the found athletes; Enter opens the marked one. */
export function FoundList({ id, query, search, marked, openId, onOpen }: FoundListProps) {
  const { t } = useTranslation("checkIn");
  const { people, more, answered } = search;
  const typed = query.trim() !== "";
  const count = people.length + more;
  return (
    <div className={css.found}>
      <p className={`small strong ${css.head}`} role="status">
        {answered && (typed ? t("search.found", { count }) : `${t("search.expected")}: ${count}`)}
      </p>
      <div id={`${id}-found`} role="listbox" aria-label={t("search.label")}>
        {people.map((person, index) => (
          <div
            key={person.athleteId}
            id={`${id}-${index}`}
            role="option"
            tabIndex={-1}
            aria-selected={index === marked}
            data-open={person.athleteId === openId}
            className={css.option}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => onOpen(person.athleteId)}
            onKeyDown={() => {}}
          >
            <Row person={person} />
          </div>
        ))}
      </div>
      {answered && people.length === 0 && <Nobody query={query.trim()} />}
      {more > 0 && <p className={css.more}>{t("search.more", { rest: more })}</p>}
    </div>
  );
}

function Row({ person }: { readonly person: FoundPerson }) {
  const { t } = useTranslation("checkIn");
  const { name, number, league, state, bib } = person;
  return (
    <>
      <span className={css.number}>{number === "" ? "–" : number}</span>
      <span className={css.who}>
        <span className="one-line strong">{name}</span>
        <span className="one-line small quiet">{league}</span>
      </span>
      {state === "testing" ? (
        <Tag tone="go">{t("bib", { bib })}</Tag>
      ) : (
        state !== "expected" && <Tag>{t(`state.${state ?? "unlisted"}`)}</Tag>
      )}
    </>
  );
}

function Nobody({ query }: { readonly query: string }) {
  const { t } = useTranslation("checkIn");
  if (query === "") return <p className={css.nobody}>{t("search.everybodyIn")}</p>;
  return (
    <p className={css.nobody}>
      <strong>{t("search.none", { query })}</strong>
      <br />
      {t("search.noneHelp")}
    </p>
  );
}
