import { useId } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/protocols/protocol.ts";
import { Cautions } from "../../parts/Cautions.tsx";
import { exampleOf } from "./examples.ts";
import { linesOf } from "./lines.ts";
import css from "./Sheet.module.css";
import { SheetDrawing } from "./SheetDrawing.tsx";

interface StationSheetProps {
  readonly test: TestCode;
  /** The parameters of the day. */
  readonly parameters: unknown;
}

/** The body of a station's page: how to set it up, run it, judge it and end it. */
export function StationSheet({ test, parameters }: StationSheetProps) {
  const { t } = useTranslation(["instructions", "station", "common"]);
  const lines = linesOf(t, test, parameters);
  return (
    <div className={css.station}>
      <SheetDrawing test={test} parameters={parameters} />
      <Part title={t("head.setUp")} area="setUp">
        <Bullets lines={lines.setUp} />
      </Part>
      <Part title={t("head.run")} area="run">
        <ol className={css.steps}>
          {lines.run.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
      </Part>
      <Part title={t("head.form")} area="form">
        <Bullets lines={lines.form} />
      </Part>
      <Part title={t("head.stop")} area="stop">
        <p>{lines.stop}</p>
      </Part>
      <Part title={t("head.mark")} area="mark">
        <p>{lines.mark}</p>
        <div className={css.example}>
          <h3>{t("head.example")}</h3>
          {exampleOf(t, test, parameters).map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </Part>
      <Cautions />
    </div>
  );
}

interface PartProps {
  readonly title: string;
  readonly area: string;
  readonly children: React.ReactNode;
}

/** A headed part of a page. */
export function Part({ title, area, children }: PartProps) {
  const id = useId();
  return (
    <section className={css.part} data-area={area} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

/** Points in any order. */
export function Bullets({ lines }: { readonly lines: readonly string[] }) {
  return (
    <ul className={css.bullets}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
