import { Fragment } from "react";
import { useTranslation } from "react-i18next";
import { hoursOf } from "../../../electron/domain/day/hours.ts";
import { saveMade, textFile } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { writeDate } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import css from "./RehearsalScreen.module.css";
import type { Rehearsed } from "./rehearsed.ts";
import { SayOfSheet } from "./SayOfSheet.tsx";
import { SheetOutcome, TakenLine } from "./SheetOutcome.tsx";
import type { Rehearsal } from "./useRehearsal.ts";

interface OutcomeProps {
  readonly rehearsed: Rehearsed;
  readonly rehearsal: Rehearsal;
}

/** Shows the result of the rehearsal: ready or not, in numbers, then what to correct, sheet by sheet. */
export function Outcome({ rehearsed, rehearsal }: OutcomeProps) {
  const { t, i18n } = useTranslation("rehearsal");
  const { date, sheets, askGuardian, keptBackSheet } = rehearsed;
  const outside = sheets.reduce((sum, { keptBack }) => sum + keptBack, 0);
  return (
    <Stack gap={6}>
      <Section
        title={t("done.title")}
        aside={
          outside > 0 && (
            <Button onPress={() => void saveMade("sheets", async () => textFile(keptBackSheet))}>
              {t("done.save")}
            </Button>
          )
        }
      >
        <p className={`lead strong ${css.verdict}`} role="status">
          {verdict()}
        </p>
        <Numbers rehearsed={rehearsed} outside={outside} />
        <Stack as="ul" gap={2}>
          {sheets.map((sheet) => (
            <TakenLine key={`${sheet.kind} ${sheet.file}`} sheet={sheet} />
          ))}
        </Stack>
        <p className="quiet">{t("done.heldHow", { date: writeDate(date, i18n.language) })}</p>
      </Section>
      {sheets.map((sheet) => (
        <Fragment key={`${sheet.kind} ${sheet.file}`}>
          <SheetOutcome sheet={sheet} />
          {sheet.form !== null && (sheet.refused !== null || sheet.keptBack > 0) && (
            <SayOfSheet
              kind={sheet.kind}
              unread={{ file: sheet.file, form: sheet.form }}
              rehearsal={rehearsal}
            />
          )}
        </Fragment>
      ))}
      {askGuardian.length > 0 && <Guardians people={askGuardian} />}
      {rehearsed.foreseen !== null && <Foreseen foreseen={rehearsed.foreseen} />}
    </Stack>
  );

  function verdict(): string {
    if (sheets.some(({ refused }) => refused !== null)) return t("done.sheetRefused");
    return outside === 0 ? t("done.ready") : t("done.notReady", { count: outside });
  }
}

function Numbers({ rehearsed, outside }: { readonly rehearsed: Rehearsed; readonly outside: number }) {
  const { t, i18n } = useTranslation("rehearsal");
  const { admitted, marks, bundle } = rehearsed;
  const { first, best, equal, below, open } = marks;
  const write = (number: number) => writeNumber(number, i18n.language);
  return (
    <div className={css.numbers}>
      <BigNumber label={t("done.athletes")} number={write(admitted)} />
      <BigNumber label={t("done.keptBack")} number={write(outside)} tone={outside > 0 ? "alert" : "plain"} />
      <BigNumber
        label={t("done.marks")}
        number={write(first + best + equal + below)}
        {...(open > 0 && { note: t("done.open", { count: open }) })}
      />
      <BigNumber label={t("done.bests")} number={write(best)} note={t("done.firsts", { count: first })} />
      <BigNumber
        label={t("done.share")}
        number={write(bundle.rows)}
        note={t("done.held", { count: bundle.held })}
      />
    </div>
  );
}

function Guardians({ people }: { readonly people: Rehearsed["askGuardian"] }) {
  const { t } = useTranslation("rehearsal");
  return (
    <Section title={t("guardian.title", { count: people.length })}>
      <p>{t("guardian.lead")}</p>
      <ul className={css.people}>
        {people.map(({ name, league, number }) => (
          <li key={`${league} ${number} ${name}`}>
            {name} <span className="quiet">{[league, number].filter((part) => part !== "").join(" ")}</span>
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** Shows what was told of a simulated day's end on the way, beside when it ended. */
function Foreseen({ foreseen: { ends, points } }: { readonly foreseen: NonNullable<Rehearsed["foreseen"]> }) {
  const { t } = useTranslation("rehearsal");
  return (
    <Section title={t("foreseen.title")}>
      <p>{t("foreseen.lead", { ends: hoursOf(ends) })}</p>
      <Stack as="ul" gap={2}>
        {points.map(({ at, from, until }) => (
          <li key={at}>
            {t("foreseen.point", { at: hoursOf(at), from: hoursOf(from), until: hoursOf(until) })}
          </li>
        ))}
      </Stack>
    </Section>
  );
}
