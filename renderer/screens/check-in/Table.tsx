import { useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useKeys } from "../../app/keys.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { PersonSheet } from "./admit/PersonSheet.tsx";
import { WalkUp } from "./admit/WalkUp.tsx";
import { Done } from "./Done.tsx";
import { Idle } from "./find/Idle.tsx";
import { SearchBox } from "./find/SearchBox.tsx";
import type { Admitted, Before, Shown } from "./people.ts";
import css from "./Table.module.css";

interface TableProps {
  /** The calendar day of the check-in, ISO 8601. */
  readonly date: string;
  /** The athlete whose sheet is open at first. */
  readonly firstId: number | null;
}

/** Shows the check-in table of an open day: the search on the left, one athlete on the right. */
export function Table({ date, firstId }: TableProps) {
  const { t } = useTranslation("checkIn");
  const trpc = useTRPC();
  const counts = useQuery(trpc.checkIn.counts.queryOptions());
  const box = useRef<HTMLInputElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const [query, setQuery] = useState("");
  const [shown, setShown] = useState<Shown>(() =>
    firstId === null ? { kind: "nobody" } : { kind: "person", athleteId: firstId },
  );

  function search(): void {
    box.current?.focus();
    box.current?.select();
  }
  function open(athleteId: number): void {
    // Whoever is open already keeps their answers, and the focus leaves the search all the same.
    if (shown.kind === "person" && shown.athleteId === athleteId) focusStart(sheet.current);
    else setShown({ kind: "person", athleteId });
  }
  function walkUp(): void {
    setShown({ kind: "walkUp", typed: query });
  }
  function nobody(): void {
    setShown({ kind: "nobody" });
    search();
  }
  function done(admitted: Admitted, before: Before | null, changed: boolean): void {
    setShown({ kind: "done", admitted, before, changed });
    setQuery("");
    box.current?.focus();
  }
  // The screen is for the next athlete at the table: typing may begin at once.
  useEffect(() => {
    if (firstId === null) box.current?.focus();
  }, [firstId]);
  // What comes next begins at its beginning, wherever the last one was scrolled to.
  const whose = `${shown.kind} ${"athleteId" in shown ? shown.athleteId : ""}`;
  useEffect(() => {
    if (whose !== "") sheet.current?.scrollTo(0, 0);
  }, [whose]);
  useKeys({ "/": search, "Alt+N": walkUp, Escape: search });
  useCalledAgain(nobody);

  // What explains the table scrolls where a window is low, and has nothing else in it that the keyboard reaches.
  const idle = { role: "region", "aria-label": t("idle.title"), tabIndex: 0 };
  const states = counts.data?.states;
  const listed = states === undefined ? 0 : Object.values(states).reduce((sum, count) => sum + count, 0);
  return (
    <Screen
      title={t("title")}
      ready={counts.isFetched}
      actions={
        <Button hint="Alt+N" onPress={walkUp}>
          {t("walkUp")}
        </Button>
      }
      hints={[
        { keys: "/", does: t("hints.search") },
        { keys: "↑+↓", does: t("hints.move") },
        { keys: "Enter", does: t("hints.open") },
      ]}
    >
      <div className={css.table} data-shown={shown.kind} data-fills data-tight>
        <SearchBox
          query={query}
          onQuery={setQuery}
          inputRef={box}
          openId={shown.kind === "person" ? shown.athleteId : null}
          onOpen={open}
        />
        <div ref={sheet} className={css.sheet} {...(shown.kind === "nobody" && idle)}>
          {shown.kind !== "nobody" && (
            <div className={css.again}>
              <Button onPress={nobody}>{t("again")}</Button>
            </div>
          )}
          {right()}
        </div>
      </div>
    </Screen>
  );

  function right() {
    switch (shown.kind) {
      case "nobody":
        return <Idle listed={counts.isFetched ? listed : null} onWalkUp={walkUp} />;
      case "person":
        return (
          <PersonSheet
            key={shown.athleteId}
            athleteId={shown.athleteId}
            onDone={done}
            onCancel={nobody}
            onLeft={search}
          />
        );
      case "walkUp":
        return (
          <WalkUp
            typed={shown.typed}
            date={date}
            freeBib={counts.data?.freeBib ?? 1}
            onDone={(admitted) => done(admitted, null, false)}
            onCancel={nobody}
          />
        );
      case "done":
        return (
          <Done
            key={shown.admitted.athleteId}
            admitted={shown.admitted}
            before={shown.before}
            changed={shown.changed}
            onOpen={(athleteId) => setShown({ kind: "person", athleteId })}
          />
        );
    }
  }
}

/** Focuses where a sheet begins: its questions, or its first button where they are answered. */
function focusStart(sheet: HTMLElement | null): void {
  const start = sheet?.querySelector<HTMLElement>("[data-start]");
  const first = start?.matches("[tabindex]") === true ? start : start?.querySelector<HTMLElement>("button");
  first?.focus();
}

/** Calls `onCalled` when somebody goes to this screen, by its key or its tab, while it is shown. */
function useCalledAgain(onCalled: () => void): void {
  const latest = useRef(onCalled);
  useEffect(() => {
    latest.current = onCalled;
  });
  useEffect(() => {
    // The place stays the same, so that nothing else tells of it.
    function onHashChange({ oldURL, newURL }: HashChangeEvent): void {
      if (oldURL === newURL) latest.current();
    }
    window.addEventListener("hashchange", onHashChange);
    return () => window.removeEventListener("hashchange", onHashChange);
  }, []);
}
