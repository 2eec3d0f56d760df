import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { Cautions } from "../../parts/layout/Cautions.tsx";
import { Help } from "./Help.tsx";
import { Part, Points } from "./Part.tsx";
import css from "./Sheet.module.css";
import { SheetDrawing } from "./SheetDrawing.tsx";
import { useLines } from "./useLines.ts";

interface StationSheetProps {
  readonly test: TestCode;
  /** The parameters of the day. */
  readonly parameters: unknown;
}

/** Lays out the body of a station's page: how to set it up, run it, judge it and end it. */
export function StationSheet({ test, parameters }: StationSheetProps) {
  const { t } = useTranslation("instructions");
  const lines = useLines(test, parameters);
  return (
    <div className={css.station}>
      <SheetDrawing test={test} parameters={parameters} />
      <div className={css.columns}>
        <div className={css.column}>
          <Part title={t("head.setUp")}>
            <Points look="boxes" lines={lines.setUp} />
          </Part>
          <Part title={t("head.form")}>
            <Points lines={lines.form} />
          </Part>
          <Part title={t("head.stop")}>
            <p>{lines.stop}</p>
          </Part>
        </div>
        <div className={css.column}>
          <Part title={t("head.run")}>
            <Points look="numbers" lines={lines.run} />
          </Part>
          <Part title={t("head.mark")}>
            <p>{lines.mark}</p>
            <div className={css.example}>
              <h3>{t("head.example")}</h3>
              {lines.example.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          </Part>
        </div>
      </div>
      <Cautions />
      <Help />
    </div>
  );
}
