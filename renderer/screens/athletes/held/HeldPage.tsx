import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { usePaperTitle, useReady, useType } from "../../../app/ready.ts";
import { dateHere, useWriteDay, useWriteTime } from "../../../words/dates.ts";
import { HeldAbout } from "./HeldAbout.tsx";
import { HeldChanges } from "./HeldChanges.tsx";
import { HeldDayPart } from "./HeldDayPart.tsx";
import css from "./HeldPage.module.css";
import { HeldPast } from "./HeldPast.tsx";
import { HeldRemoved } from "./HeldRemoved.tsx";
import type { Held } from "./types.ts";

/** Lays out all data held about one athlete for paper, on as many pages as needed; nothing for an invalid address. */
export function HeldPage({ athleteId, paper }: { readonly athleteId: string; readonly paper: string }) {
  const size = (["a4", "letter"] as const).find((each) => each === paper);
  if (size === undefined || !/^\d{1,15}$/.test(athleteId)) return null;
  return <Loaded athleteId={Number(athleteId)} paper={size} />;
}

function Loaded({ athleteId, paper }: { readonly athleteId: number; readonly paper: "a4" | "letter" }) {
  const { t } = useTranslation("held");
  const trpc = useTRPC();
  const held = useQuery(trpc.people.held.queryOptions({ athleteId })).data;
  const type = useType(held !== undefined);
  // No name: a printer's or a system's memory of a job must not identify anybody.
  usePaperTitle(t("page.file"));
  useReady(held !== undefined && type);
  return held !== undefined && <Page held={held} paper={paper} />;
}

function Page({ held, paper }: { readonly held: Held; readonly paper: "a4" | "letter" }) {
  const { t } = useTranslation("held");
  const writeDay = useWriteDay();
  const writeTime = useWriteTime();
  const { made_at, invented, person, days } = held;
  const values = {
    date: writeDay(dateHere(new Date(made_at))),
    time: writeTime(made_at),
    name: person.name,
  };
  return (
    <main className={css.page} data-paper={paper}>
      <header>
        <h1>{t("page.title")}</h1>
        <p>{t("page.made", values)}</p>
        {invented && <p className="strong">{t("page.invented")}</p>}
      </header>
      <HeldAbout held={held} />
      {days.map((day) => (
        <HeldDayPart key={`${day.date} ${day.title}`} day={day} />
      ))}
      <HeldPast marks={held.past_marks} />
      <HeldRemoved marks={held.past_removed} />
      <HeldChanges changes={held.changes} />
      <HeldWhy />
    </main>
  );
}

/** Says why each kind of data is held, for how long, and how it is deleted. */
function HeldWhy() {
  const { t } = useTranslation("held");
  const reasons = ["name", "birth", "consent", "marks", "keyed", "long", "erase"] as const;
  return (
    <section className={css.day}>
      <h2>{t("page.why")}</h2>
      <ul className={css.heats}>
        {reasons.map((reason) => (
          <li key={reason}>{t(`page.reason.${reason}`)}</li>
        ))}
      </ul>
      <p>{t("page.machine")}</p>
    </section>
  );
}
