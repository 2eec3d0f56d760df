import { type ReactNode, useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Section } from "../../../parts/layout/Panel.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import { RestDialog } from "../../../parts/plan/RestDialog.tsx";
import css from "../Plan.module.css";
import type { Planned } from "../types.ts";
import { CallsDialog } from "./CallsDialog.tsx";
import { HoursDialog } from "./HoursDialog.tsx";
import { LeaguesDialog } from "./LeaguesDialog.tsx";
import { StationDialog } from "./StationDialog.tsx";
import { useGivenWords } from "./useGivenWords.ts";

type Part = "hours" | "leagues" | "calls" | "rest" | TestCode;

/** Says what the plan reckons with, each part with the way to change it; of a closed day only what it was. */
export function Given({ planned }: { readonly planned: Planned }) {
  const { t } = useTranslation("plan");
  const testWord = useTestWords();
  const words = useGivenWords(planned);
  const [changing, setChanging] = useState<Part | null>(null);
  const isAssumed = planned.stations.some(({ turn, changeOver }) =>
    [turn, changeOver].some(({ from }) => from === "assumed"),
  );
  const fact = (part: Part, name: ReactNode, says: readonly string[], changes: string) => (
    <Fact
      key={part}
      name={name}
      says={says}
      label={changes}
      onChange={planned.state === "closed" ? null : () => setChanging(part)}
    />
  );
  return (
    <Section title={t("given.title")}>
      {isAssumed && <p className="small quiet">{t("given.assumed")}</p>}
      <ul>
        {fact("hours", t("hours.title"), words.hours, t("hours.change"))}
        {fact("leagues", t("leagues.title"), words.leagues, t("leagues.change"))}
        {planned.stations.map((station) =>
          fact(
            station.test,
            <TestMark test={station.test} size="small" name="ability" />,
            words.station(station),
            t("station.change", { station: testWord(station.test, "name") }),
          ),
        )}
        {fact("rest", t("given.rest"), words.rest, t("given.restChange"))}
        {fact("calls", t("calls.title"), words.calls, t("calls.change"))}
      </ul>
      {changing !== null && <Changing planned={planned} part={changing} onClose={() => setChanging(null)} />}
    </Section>
  );
}

interface FactProps {
  readonly name: ReactNode;
  readonly says: readonly string[];
  readonly label: string;
  /** Null where it can't be changed any more. */
  readonly onChange: (() => void) | null;
}

function Fact({ name, says, label, onChange }: FactProps) {
  const { t } = useTranslation("plan");
  return (
    <li className={css.fact}>
      <div>
        <div className="strong">{name}</div>
        {says.map((line) => (
          <p key={line} className={`small ${css.says}`}>
            {line}
          </p>
        ))}
      </div>
      {onChange !== null && (
        <Button label={label} onPress={onChange}>
          {t("given.change")}
        </Button>
      )}
    </li>
  );
}

interface ChangingProps {
  readonly planned: Planned;
  readonly part: Part;
  readonly onClose: () => void;
}

function Changing({ planned, part, onClose }: ChangingProps) {
  if (part === "hours") return <HoursDialog planned={planned} onClose={onClose} />;
  if (part === "leagues") return <LeaguesDialog planned={planned} onClose={onClose} />;
  if (part === "calls") return <CallsDialog planned={planned} onClose={onClose} />;
  if (part === "rest") return <RestDialog minutes={planned.restMinutes} onClose={onClose} />;
  const station = planned.stations.find(({ test }) => test === part);
  return station === undefined ? null : (
    <StationDialog planned={planned} station={station} onClose={onClose} />
  );
}
