import { useTranslation } from "react-i18next";
import type { Paper } from "../../../app/saving.ts";
import { TableHead } from "../../../parts/layout/TableHead.tsx";
import { Ticks } from "../../../parts/marks/Ticks.tsx";
import { useWriteDay } from "../../../words/dates.ts";
import type { NetworkView } from "../view.ts";
import css from "./SetUpSheet.module.css";

/** As many devices as a hall begins with: one for each station. */
const devices = [1, 2, 3, 4, 5];

interface SetUpSheetProps {
  readonly paper: Paper;
  readonly day: { readonly title: string; readonly date: string };
  /** Where the laptop is reached; null while the switch is off, and then there are lines to write on. */
  readonly on: NetworkView["on"];
}

/** One page for the organiser: how a hall sets up its first five devices, step by step, with what they have to compare. */
export function SetUpSheet({ paper, day, on }: SetUpSheetProps) {
  const { t } = useTranslation(["devices", "common"]);
  const writeDay = useWriteDay();
  return (
    <article className={`${css.sheet} print-sheet`} data-paper={paper}>
      <header className={css.head}>
        <h1>{t("paper.title")}</h1>
        <p className="print-day">
          <strong>{day.title}</strong>
          <span>{writeDay(day.date)}</span>
        </p>
        <Ticks />
      </header>
      <p className={css.lead}>{t("paper.lead", { count: devices.length })}</p>
      <dl className={css.facts}>
        <Fact name={t("join.address")} value={on?.url ?? null} />
        <Fact name={t("join.key")} value={on?.shortForm ?? null} />
        <Fact name={t("paper.wifi")} value={null} />
      </dl>
      <Steps title={t("paper.before.title")} lines={steps("before", t)} />
      <Steps title={t("paper.each.title")} lines={steps("each", t)} />
      <DeviceLines />
      <Steps title={t("paper.trouble.title")} lines={steps("trouble", t)} plain />
      <footer className="print-foot">
        <span>{t(on === null ? "paper.foot.off" : "paper.foot.on")}</span>
        <span>{t("common:name")}</span>
      </footer>
    </article>
  );
}

type Say = ReturnType<typeof useTranslation<["devices", "common"]>>["t"];

function steps(part: "before" | "each" | "trouble", t: Say): string[] {
  switch (part) {
    case "before":
      return [t("paper.before.network"), t("paper.before.on"), t("paper.before.code")];
    case "each":
      return [
        t("paper.each.same"),
        t("paper.each.scan"),
        t("paper.each.warning"),
        t("paper.each.type"),
        t("paper.each.yes"),
      ];
    case "trouble":
      return [
        t("paper.trouble.nothing"),
        t("paper.trouble.guests"),
        t("paper.trouble.code"),
        t("paper.trouble.lost"),
      ];
  }
}

/** What the laptop says, or a line to write it on. */
function Fact({ name, value }: { readonly name: string; readonly value: string | null }) {
  return (
    <div className={css.fact}>
      <dt>{name}</dt>
      <dd data-line={value === null}>{value}</dd>
    </div>
  );
}

interface StepsProps {
  readonly title: string;
  readonly lines: readonly string[];
  /** In no order. */
  readonly plain?: boolean;
}

function Steps({ title, lines, plain = false }: StepsProps) {
  const List = plain ? "ul" : "ol";
  return (
    <section className={css.steps}>
      <h2>{title}</h2>
      <List>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </List>
    </section>
  );
}

/** A line for each device, to be ticked off. */
function DeviceLines() {
  const { t } = useTranslation("devices");
  return (
    <table className={css.devices}>
      <TableHead heads={[t("paper.number"), t("list.name"), t("list.place"), t("paper.joined")]} />
      <tbody>
        {devices.map((number) => (
          <tr key={number}>
            <td>{number}</td>
            <td />
            <td />
            <td>
              <span className={css.box} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
