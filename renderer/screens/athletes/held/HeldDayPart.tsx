import { useTranslation } from "react-i18next";
import { writeMark } from "../../../../electron/domain/tests/written.ts";
import { formatTime } from "../../../../electron/domain/units.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { TableHead } from "../../../parts/layout/TableHead.tsx";
import { useWriteDay, useWriteTime } from "../../../words/dates.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { useMarkText } from "../../../words/marks.ts";
import { useSay } from "../../../words/say.ts";
import { HeldAttempts } from "./HeldAttempts.tsx";
import css from "./HeldPage.module.css";
import type { HeldDay } from "./types.ts";
import { useWayInBrackets } from "./useWayInBrackets.ts";

/** Shows one day: the athlete's attendance, the attempts, and the marks. */
export function HeldDayPart({ day }: { readonly day: HeldDay }) {
  const { t } = useTranslation("held");
  const writeDay = useWriteDay();
  const sentences = useSentences(day);
  return (
    <section className={css.day}>
      <h2>{t("page.dayOf", { title: day.title, date: writeDay(day.date) })}</h2>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <HeldAttempts attempts={day.attempts} />
      {day.marks.length > 0 && <HeldMarks marks={day.marks} />}
      {day.heats.length > 0 && <HeldHeats heats={day.heats} />}
    </section>
  );
}

/** Says how the athlete attended and which tests they skipped, each in a sentence. */
function useSentences({ entry, left_out, calls, absences }: HeldDay): string[] {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const writeTime = useWriteTime();
  const nameOf = (test: HeldDay["calls"][number]["test"]) => testWord(test, "name");
  const { state, bib, since } = entry;
  const withBib = state === "withdrawn" && bib !== null ? "withdrawnBib" : state;
  const left = left_out.map(({ test, kind, reason, decided_by, at }) =>
    t(`page.${kind}`, { test: nameOf(test), reason, by: decided_by, time: writeTime(at) }),
  );
  const called = calls.map(({ test, at }) => t("page.called", { test: nameOf(test), time: writeTime(at) }));
  const absent = absences.map(({ test, at, noted_by }) =>
    t("page.absent", { test: nameOf(test), by: noted_by, time: writeTime(at) }),
  );
  return [t(`page.state.${withBib}`, { bib, time: writeTime(since) }), ...left, ...called, ...absent];
}

type Mark = HeldDay["marks"][number];

/** Lists the marks of a day's attempts. */
function HeldMarks({ marks }: { readonly marks: readonly Mark[] }) {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  const say = useSay();
  const markText = useMarkText();
  const wayOf = useWayInBrackets();
  const rows = marks.map(({ test, variant, detail }) => {
    const written = writeMark(test, detail, lengths);
    const { note } = written;
    const said = [markText(written), note === undefined ? "" : say(note)];
    const mark = said.filter((part) => part !== "").join(", ");
    return { key: `${test} ${variant}`, test: testWord(test, "name") + wayOf(variant), mark };
  });
  return (
    <>
      <h3>{t("page.marks")}</h3>
      <table className={css.table}>
        <TableHead heads={[t("page.test"), t("page.mark")]} />
        <tbody>
          {rows.map(({ key, test, mark }) => (
            <tr key={key}>
              <th scope="row">{test}</th>
              <td className="strong">{mark}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

type Heat = HeldDay["heats"][number];

/** Lists the live heats in which the athlete had a lane, with every tap made for it. */
function HeldHeats({ heats }: { readonly heats: readonly Heat[] }) {
  const { t } = useTranslation("held");
  return (
    <>
      <h3>{t("page.heats")}</h3>
      <ul className={css.heats}>
        {heats.map((heat) => (
          <li key={heat.id}>
            <OneHeat heat={heat} />
          </li>
        ))}
      </ul>
    </>
  );
}

function OneHeat({ heat }: { readonly heat: Heat }) {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const writeTime = useWriteTime();
  const writeTaps = useWriteTaps();
  const { test, lane, gathered_at, ended_at, ending, reason, taps } = heat;
  const head = t("page.heat", { test: testWord(test, "name"), lane, time: writeTime(gathered_at) });
  const off = ending === "called-off" ? "page.heatOff" : "page.heatEnded";
  const end = ended_at === null ? "" : `, ${t(off, { time: writeTime(ended_at), reason })}`;
  return (
    <>
      <span className="strong">
        {head}
        {end}.
      </span>{" "}
      {taps.length === 0 ? t("page.noTaps") : t("page.taps", { taps: writeTaps(taps) })}
    </>
  );
}

const kinds = [
  ...(["off", "on-again", "stop", "go", "landing", "touch", "count", "take", "false-start"] as const),
  ...(["rerun", "round", "not-finished", "reach", "enough", "aside", "undo", "sure"] as const),
];

/** Formats all taps in one line: kind, time by the heat's clock, and by whom. */
function useWriteTaps(): (taps: Heat["taps"]) => string {
  const { t } = useTranslation("held");
  return (taps) =>
    taps
      .map(({ kind, at_ms, tapped_by }) => {
        const known = kinds.find((each) => each === kind);
        const what = known === undefined ? kind : t(`page.tap.${known}`);
        return t("page.tapBy", { what, time: formatTime(at_ms, true), by: tapped_by });
      })
      .join("; ");
}
