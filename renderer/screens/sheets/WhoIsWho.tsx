import type { TFunction } from "i18next";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import type { Preview } from "../../parts/sheets/sheet.ts";
import css from "./Sheets.module.css";
import type { SheetInHand } from "./useSheet.ts";

type Question = Preview["questions"][number];
type Person = Question["said"];
type Words = TFunction<"sheets">;

interface WhoIsWhoProps {
  readonly preview: Preview;
  readonly sheet: SheetInHand;
}

/** Asks who or which league rows mean, where only people can say so; nothing is imported before it is answered. */
export function WhoIsWho({ preview, sheet }: WhoIsWhoProps) {
  const { t } = useTranslation("sheets");
  const { questions, questionCount } = preview;
  const given = Object.keys(sheet.said.answers ?? {}).length;
  if (questionCount + given === 0) return null;
  const again = given > 0 && (
    <Button onPress={() => sheet.say({ answers: {} })}>{t("who.again", { count: given })}</Button>
  );
  return (
    <Section title={t("who.title", { count: questionCount })} aside={again}>
      {questionCount > 0 && <p>{t("who.lead")}</p>}
      <Stack as="ul" gap={4}>
        {questions.map((question) => (
          <li key={question.id} className={css.question}>
            <AskOne question={question} sheet={sheet} />
          </li>
        ))}
      </Stack>
      {questions.length < questionCount && (
        <p>{t("rows.first", { shown: questions.length, of: questionCount })}</p>
      )}
    </Section>
  );
}

function AskOne({ question, sheet }: { readonly question: Question; readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const { id, about, candidates, lines, mayBeNew, loses } = question;
  const answer = (given: number | "new") => sheet.say({ answers: { ...sheet.said.answers, [id]: given } });
  const { leftOut = [] } = sheet.said;
  return (
    <Stack gap={2}>
      <p className="strong">{askedOf(question, t)}</p>
      <p>{t("who.stands", { lines: lines.slice(0, 8).join(", "), count: lines.length })}</p>
      <Row gap={2} wrap>
        {candidates.map((candidate, index) => (
          <Button key={JSON.stringify(candidate)} onPress={() => answer(index)}>
            {t(about === "league" ? "who.sameLeague" : "who.same", { who: told(candidate, t) })}
          </Button>
        ))}
        {mayBeNew && <Button onPress={() => answer("new")}>{otherOf(question, t)}</Button>}
        <Button onPress={() => sheet.say({ leftOut: [...leftOut, ...lines] })}>
          {t("who.leaveOut", { count: lines.length })}
        </Button>
      </Row>
      {loses !== null && mayBeNew && <p>{t("who.loses", { name: loses, number: question.said.number })}</p>}
    </Stack>
  );
}

/** The question itself: whom the sheet has, and whom the list has. */
function askedOf({ about, said, line }: Question, t: Words): string {
  if (about === "league") return t("who.askLeague", { league: said.league });
  if (line !== null) return t("who.askLine", { who: told(said, t), line });
  return t("who.ask", { who: told(said, t) });
}

function otherOf({ about, takesNew }: Question, t: Words): string {
  if (about === "league") return t(takesNew ? "who.newLeague" : "who.noLeague");
  return t(takesNew ? "who.other" : "who.noOther");
}

/** Somebody in one line: name, number, league, year of birth, as far as they are known. */
function told({ name, number, league, birthYear }: Person, t: Words): string {
  if (name === "" && number === "") return league;
  return [
    name,
    number === "" ? t("who.noNumber") : t("who.number", { number }),
    league,
    birthYear === null ? "" : t("who.born", { year: birthYear }),
  ]
    .filter((part) => part !== "")
    .join(" · ");
}
