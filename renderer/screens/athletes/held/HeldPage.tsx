import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { protocolOf } from "../../../../electron/domain/tests/registry.ts";
import { writeMark } from "../../../../electron/domain/tests/written.ts";
import { useTRPC } from "../../../app/client.tsx";
import { usePaperTitle, useReady, useType } from "../../../app/ready.ts";
import { type Paper, paperNamed } from "../../../app/saving.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { TableHead } from "../../../parts/layout/TableHead.tsx";
import { dateHere, useWriteDay, useWriteTime, writeMoment } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { useMarkText } from "../../../words/marks.ts";
import { HeldAbout } from "./HeldAbout.tsx";
import { HeldDayPart } from "./HeldDayPart.tsx";
import css from "./HeldPage.module.css";
import { HeldReadings } from "./HeldReadings.tsx";
import type { Held } from "./types.ts";
import { useWayInBrackets } from "./useWayInBrackets.ts";

/** Lays out all data held about one athlete for paper, on as many pages as needed; nothing for an invalid address. */
export function HeldPage({ athleteId, paper }: { readonly athleteId: string; readonly paper: string }) {
  const size = paperNamed(paper);
  if (size === undefined || !/^\d{1,15}$/.test(athleteId)) return null;
  return <Loaded athleteId={Number(athleteId)} paper={size} />;
}

function Loaded({ athleteId, paper }: { readonly athleteId: number; readonly paper: Paper }) {
  const { t } = useTranslation("held");
  const trpc = useTRPC();
  const held = useQuery(trpc.people.held.queryOptions({ athleteId })).data;
  const type = useType(held !== undefined);
  // No name: a printer's or a system's memory of a job must not identify anybody.
  usePaperTitle(t("page.file"));
  useReady(held !== undefined && type);
  return held !== undefined && <Page held={held} paper={paper} />;
}

function Page({ held, paper }: { readonly held: Held; readonly paper: Paper }) {
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
      <HeldReadings readings={held.study_readings} />
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

type Removed = Held["past_removed"][number];

/** Lists imported results that were removed or corrected, with who did it and why; nothing where there are none. */
function HeldRemoved({ marks }: { readonly marks: readonly Removed[] }) {
  const { t, i18n } = useTranslation("planning");
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const writeDay = useWriteDay();
  const markText = useMarkText();
  if (marks.length === 0) return null;
  function written({ test }: Removed, value: number): string {
    const grains = Math.round(value * protocolOf(test).grain.perUnit);
    return markText(writeMark(test, { state: "complete", value: grains }, lengths));
  }
  return (
    <section className={css.day}>
      <h2>{t("past.gone")}</h2>
      <ul>
        {marks.map((mark) => (
          <li key={`${mark.at} ${mark.date} ${mark.protocol}`}>
            {writeDay(mark.date)}, {testWord(mark.test, "name")}: {written(mark, mark.value)},{" "}
            {t(mark.instead === null ? "past.removed" : "past.corrected", {
              by: mark.voided_by,
              at: writeMoment(mark.at, i18n.language),
              reason: mark.reason,
              instead: mark.instead === null ? "" : written(mark, mark.instead),
            })}
          </li>
        ))}
      </ul>
    </section>
  );
}

type Change = Held["changes"][number];

/** What was done to the record as a whole: imports, corrections, records made one; nothing where nothing was. */
function HeldChanges({ changes }: { readonly changes: readonly Change[] }) {
  const { t, i18n } = useTranslation("steps");
  const told = changes.filter(({ table }) => table === "athlete");
  if (told.length === 0) return null;
  const whoIs = ({ name, number }: NonNullable<Change["before"]>) =>
    [name, number === "" ? t("noNumber") : t("number", { number })].join(" · ");
  return (
    <section className={css.day}>
      <h2>{t("title.identity")}</h2>
      <ul>
        {told.map(({ kind, at, before, after }) => (
          <li key={`${at} ${kind} ${JSON.stringify(before)}`}>
            {writeMoment(at, i18n.language)}: {t(`held.${kind}`)}
            {before !== null && `: ${whoIs(before)}`}
            {after !== null && ` → ${whoIs(after)}`}
          </li>
        ))}
      </ul>
    </section>
  );
}

type Past = Held["past_marks"][number];

/** Lists the marks from a sheet of past results; nothing where there are none. */
function HeldPast({ marks }: { readonly marks: readonly Past[] }) {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const writeDay = useWriteDay();
  const markText = useMarkText();
  const wayOf = useWayInBrackets();
  if (marks.length === 0) return null;
  function written({ test, value }: Past): string {
    const grains = Math.round(value * protocolOf(test).grain.perUnit);
    return markText(writeMark(test, { state: "complete", value: grains }, lengths));
  }
  return (
    <section className={css.day}>
      <h2>{t("page.past")}</h2>
      <table className={css.table}>
        <TableHead heads={[t("page.date"), t("page.test"), t("page.mark")]} />
        <tbody>
          {marks.map((mark) => (
            <tr key={`${mark.date} ${mark.protocol}`}>
              <td>{writeDay(mark.date)}</td>
              <th scope="row">
                {testWord(mark.test, "name")}
                {wayOf(mark.variant)}
              </th>
              <td className="strong">{written(mark)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
