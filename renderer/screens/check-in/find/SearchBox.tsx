import { type KeyboardEvent, type Ref, useId, useState } from "react";
import { useTranslation } from "react-i18next";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { FoundList } from "./FoundList.tsx";
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
