import { type KeyboardEvent, type Ref, useId, useState } from "react";
import { useTranslation } from "react-i18next";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { Tag } from "../../../parts/marks/Tag.tsx";
import type { FoundPerson } from "../people.ts";
import css from "./SearchBox.module.css";
import { isUndecided, useSearch } from "./useSearch.ts";

interface SearchBoxProps {
  readonly query: string;
  readonly onQuery: (query: string) => void;
  readonly inputRef: Ref<HTMLInputElement>;
  /** Id of the athlete open on the right. */
  readonly openId: number | null;
  readonly onOpen: (athleteId: number) => void;
}

/** Searches while typing: arrows move, Enter opens; a scanned bib ends with Enter by itself. */
export function SearchBox({ query, onQuery, inputRef, openId, onOpen }: SearchBoxProps) {
  const { t } = useTranslation("checkIn");
  const id = useId();
  const [active, setActive] = useState<number | null>(null);
  const [undecided, setUndecided] = useState(false);
  const search = useSearch(query);
  // Without text, Enter opens nobody until the arrows have chosen.
  const first = query.trim() === "" ? -1 : 0;
  const marked = Math.min(active ?? first, search.people.length - 1);

  function change(typed: string): void {
    onQuery(typed);
    setActive(null);
    setUndecided(false);
  }

  async function enter(): Promise<void> {
    const people = await search.now();
    if (active === null && !undecided && isUndecided(query, people)) {
      setUndecided(true);
      return;
    }
    const person = people[Math.min(active ?? first, people.length - 1)];
    if (person !== undefined) onOpen(person.athleteId);
  }

  function press(event: KeyboardEvent): void {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step !== undefined) {
      event.preventDefault();
      setUndecided(false);
      setActive(Math.max(0, Math.min(marked + step, search.people.length - 1)));
    } else if (event.key === "Enter" && !event.nativeEvent.isComposing) {
      event.preventDefault();
      void enter();
    } else if (event.key === "Escape" && query !== "") {
      event.stopPropagation();
      change("");
    }
  }

  return (
    <Stack as="section" gap={1} top>
      <label className="strong" htmlFor={id}>
        {t("search.label")}
      </label>
      <input
        id={id}
        ref={inputRef}
        className={css.input}
        type="search"
        role="combobox"
        aria-expanded="true"
        aria-controls={`${id}-found`}
        aria-activedescendant={marked >= 0 ? `${id}-${marked}` : undefined}
        aria-describedby={`${id}-help`}
        autoComplete="off"
        spellCheck="false"
        maxLength={200}
        value={query}
        onChange={(event) => change(event.currentTarget.value)}
        onKeyDown={press}
      />
      <p id={`${id}-help`} className="small quiet">
        {t("search.help")}
      </p>
      {undecided && (
        <p className={css.undecided} role="alert">
          {t("search.several", { number: query.trim() })}
        </p>
      )}
      <FoundList id={id} query={query} search={search} marked={marked} openId={openId} onOpen={onOpen} />
    </Stack>
  );
}

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
function FoundList({ id, query, search, marked, openId, onOpen }: FoundListProps) {
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
