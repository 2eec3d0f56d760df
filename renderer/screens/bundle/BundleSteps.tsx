import { type ReactNode, useId, useRef } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { Ticks } from "../../parts/marks/Ticks.tsx";
import css from "./BundleSteps.module.css";
import { NothingToShare } from "./NothingToShare.tsx";
import type { Preview } from "./preview.ts";
import { RiskReport } from "./RiskReport.tsx";
import { WhatLeaves } from "./WhatLeaves.tsx";
import { WriteFile } from "./WriteFile.tsx";

interface BundleStepsProps {
  readonly bundle: Preview;
  /** True while another choice is being computed: this one can't be written. */
  readonly isOld: boolean;
}

/** Shows the four steps; with no row to share, the reasons and what to do about them. */
export function BundleSteps({ bundle, isOld }: BundleStepsProps) {
  const { t } = useTranslation("bundle");
  const word = useRef<HTMLInputElement>(null);

  function goToFile(): void {
    word.current?.scrollIntoView({ block: "center" });
    word.current?.focus({ preventScroll: true });
  }
  if (bundle.rows.length === 0) {
    return (
      <>
        <NothingToShare bundle={bundle} />
        {bundle.held.length > 0 && (
          <Step title={t("stays.title")}>
            <HeldBack bundle={bundle} />
          </Step>
        )}
      </>
    );
  }
  return (
    <>
      <Glance bundle={bundle} onToFile={goToFile} />
      <Step number={1} title={t("risk.title")}>
        <RiskReport bundle={bundle} />
      </Step>
      <Step number={2} title={t("leaves.title")}>
        <WhatLeaves bundle={bundle} />
      </Step>
      <Step number={3} title={t("stays.title")}>
        <HeldBack bundle={bundle} />
      </Step>
      <Step number={4} title={t("write.title")}>
        <WriteFile bundle={bundle} isOld={isOld} wordRef={word} />
      </Step>
    </>
  );
}

interface StepProps {
  /** The step's number, painted large; undefined where there is only one step. */
  readonly number?: number;
  readonly title: string;
  readonly children: ReactNode;
}

/** Shows one step of the page under a measured line. */
function Step({ number, title, children }: StepProps) {
  const id = useId();
  return (
    <section className={css.step} aria-labelledby={id}>
      <Ticks />
      <Row as="header" gap={3} align="center">
        {number !== undefined && <span className={`lead figures ${css.number}`}>{number}</span>}
        <h2 id={id}>{title}</h2>
      </Row>
      {children}
    </section>
  );
}

/** Lists the withheld marks by reason: their number, why, and what the organiser can do about it. */
function HeldBack({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  if (bundle.held.length === 0) return <p>{t("stays.nothing")}</p>;
  return (
    <ul className={css.reasons}>
      {bundle.held.map(({ reason, marks, athletes }) => (
        <li key={reason}>
          <span className={`figures ${css.heldBackNumber}`}>{marks}</span>
          <div>
            <p className="strong">
              {t("stays.of", { count: marks, athletes: t("count.athletes", { count: athletes }) })}
            </p>
            <p>{t(`stays.${reason}.why`, { k: bundle.k, two: 2 * bundle.k })}</p>
            <p className="quiet">{t(`stays.${reason}.do`)}</p>
          </div>
        </li>
      ))}
    </ul>
  );
}

interface GlanceProps {
  readonly bundle: Preview;
  /** Goes to the last step, for an organiser who has looked before. */
  readonly onToFile: () => void;
}

/** Sums the bundle up in three numbers: marks released, marks withheld, and the smallest group of rows alike. */
function Glance({ bundle, onToFile }: GlanceProps) {
  const { t } = useTranslation("bundle");
  const { rows, athletes, kReached } = bundle;
  const leaves = rows.reduce((sum, { marks }) => sum + marks.length, 0);
  const stays = bundle.held.reduce((sum, held) => sum + held.marks, 0);
  return (
    <div className={css.glance}>
      <BigNumber
        label={t("glance.leaves")}
        number={leaves}
        unit={t("glance.marks", { count: leaves })}
        note={t("glance.of", { athletes: t("count.athletes", { count: athletes }) })}
      />
      <BigNumber
        label={t("glance.stays")}
        number={stays}
        unit={t("glance.marks", { count: stays })}
        {...(stays > 0 && { note: t("glance.see") })}
      />
      {kReached !== null && (
        <BigNumber
          label={t("glance.smallest")}
          number={kReached}
          unit={t("glance.athletes", { count: kReached })}
          note={t("glance.alike")}
        />
      )}
      <Button onPress={onToFile}>{t("glance.toFile")}</Button>
    </div>
  );
}
