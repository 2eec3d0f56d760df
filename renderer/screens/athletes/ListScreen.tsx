import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { useKeys } from "../../app/keys.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { StepList } from "../../parts/steps/StepList.tsx";
import css from "./Athletes.module.css";
import { AthletesTable } from "./AthletesTable.tsx";
import { Filter, type Need } from "./Filter.tsx";
import { Erasures } from "./held/Erasures.tsx";
import { LeagueDialog } from "./join/LeagueDialog.tsx";

interface Input {
  readonly query: string;
  readonly leagueId: number | null;
  readonly need: Need;
  readonly page: number;
}

const everybody: Input = { query: "", leagueId: null, need: "all", page: 0 };

/** Lists all athletes in the store, by league and name, or those that match the typed text. */
export function ListScreen() {
  const { t } = useTranslation(["athletes", "noise", "reference"]);
  const [, go] = useLocation();
  const trpc = useTRPC();
  const box = useRef<HTMLInputElement>(null);
  const [input, setInput] = useState<Input>(everybody);
  const options = trpc.people.list.queryOptions(input);
  const list = useQuery({ ...options, placeholderData: keepPreviousData });
  const [isLost, setLost] = useState(false);
  const change = (some: Partial<Input>) => {
    setInput({ ...input, ...some });
    setLost(false);
  };
  const chosen = list.data?.leagues.find(({ id }) => id === input.leagueId);
  // A league that was merged, or is gone with its import, has nobody: its filter would show an empty list for ever.
  if (list.data !== undefined && input.leagueId !== null && chosen === undefined) {
    setInput({ ...input, leagueId: null, page: 0 });
    setLost(true);
  }
  useKeys({ "/": () => box.current?.focus() });
  // The button that led to the merge is gone with its league.
  useEffect(() => {
    if (isLost) box.current?.focus();
  }, [isLost]);

  /** Waits for the answer to the typed text, since a scanner presses Enter at once. */
  async function openFirst(): Promise<void> {
    const { people } = await queryClient.fetchQuery(options);
    if (input.query.trim() !== "" && people[0] !== undefined) go(`/athletes/${people[0].athleteId}`);
  }
  return (
    <Screen
      title={t("title")}
      actions={
        <>
          <LinkButton to="/reference">{t("reference:link")}</LinkButton>
          <LinkButton to="/noise">{t("noise:link")}</LinkButton>
        </>
      }
      ready={list.isFetched}
      hints={[{ keys: "/", does: t("hints.search") }]}
    >
      <Answer query={list}>
        {(told) =>
          told.leagues.length === 0 ? (
            <Empty />
          ) : (
            <>
              <Filter
                query={input.query}
                leagueId={input.leagueId}
                need={input.need}
                leagues={told.leagues}
                inputRef={box}
                onChange={(some) => change({ ...some, page: 0 })}
                onEnter={() => void openFirst()}
              />
              <Found count={told.total} league={chosen} isLost={isLost} />
              <AthletesTable people={told.people} onClear={() => change(everybody)} />
              <Pages page={told.page} pages={told.pages} onPage={(page) => change({ page })} />
            </>
          )
        }
      </Answer>
      <StepList of="identity" />
      <Erasures />
    </Screen>
  );
}

function Empty() {
  const { t } = useTranslation("athletes");
  return (
    <EmptyState
      title={t("empty.title")}
      steps={[t("empty.sheets")]}
      action={
        <LinkButton kind="primary" to="/sheets">
          {t("empty.go")}
        </LinkButton>
      }
    />
  );
}

interface PagesProps {
  /** Index of the page, from 0. */
  readonly page: number;
  readonly pages: number;
  readonly onPage: (page: number) => void;
}

/** Turns the pages of a long list; renders nothing where one page holds all. */
function Pages({ page, pages, onPage }: PagesProps) {
  const { t } = useTranslation("athletes");
  if (pages === 1) return null;
  return (
    <Row as="nav" gap={4} align="center" aria-label={t("pages.label")}>
      <Button disabled={page === 0} onPress={() => onPage(page - 1)}>
        {t("pages.before")}
      </Button>
      <span role="status">{t("pages.at", { page: page + 1, pages })}</span>
      <Button disabled={page === pages - 1} onPress={() => onPage(page + 1)}>
        {t("pages.after")}
      </Button>
    </Row>
  );
}

interface FoundProps {
  /** Number of athletes that the filter leaves. */
  readonly count: number;
  /** The league that alone is shown; undefined: all. */
  readonly league: { readonly id: number; readonly name: string } | undefined;
  /** True after the chosen league is no longer there. */
  readonly isLost: boolean;
}

/** Says over the list how many it holds, and offers what can be done with the chosen league. */
function Found({ count, league, isLost }: FoundProps) {
  const { t } = useTranslation("athletes");
  return (
    <Row gap={4} align="center" between wrap className={css.found}>
      <p role="status">
        {isLost && <strong>{t("leagueLost")} </strong>}
        {t("count", { count })}
      </p>
      <LeagueChange key={league?.id} league={league} />
    </Row>
  );
}

/** Renames the league that the list shows, or merges it with another; nothing while it shows all. */
function LeagueChange({
  league,
}: {
  readonly league: { readonly id: number; readonly name: string } | undefined;
}) {
  const { t } = useTranslation("steps");
  const [open, setOpen] = useState(false);
  if (league === undefined) return null;
  return (
    <>
      <Button onPress={() => setOpen(true)}>{t("league.do")}</Button>
      {open && <LeagueDialog league={league} onClose={() => setOpen(false)} />}
    </>
  );
}
