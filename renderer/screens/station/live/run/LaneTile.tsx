import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { clockOf } from "../../../../../electron/domain/heats/fold.ts";
import { Row } from "../../../../parts/flow/Stack.tsx";
import { onDown } from "../../../../tests/live/onDown.ts";
import type { Live, LiveLane, LiveTool } from "../../../../tests/live/tool.ts";
import { BothAnswers } from "../../Doubts.tsx";
import { asksNow } from "./asking.ts";
import { LaneDone } from "./LaneDone.tsx";
import css from "./LaneTile.module.css";

interface LaneTileProps {
  readonly live: Live;
  readonly lane: LiveLane;
  readonly tool: LiveTool<Live["test"]>;
  /** Corrects the lane's result; null while that is impossible. */
  readonly onCorrect: (() => void) | null;
  /** Opens the correction of one result of the lane, by its key. */
  readonly correct: (key: string) => void;
  /** The actions on a lane that has not begun, where each goes at its own pace. */
  readonly menu?: ReactNode;
}

/** Width of a lane in rem. */
const usualWidth = 14;

/** Shows a lane of a running heat: number, key, athlete, and the test's content; all one button where one tap does. */
export function LaneTile({ live, lane, tool, onCorrect, correct, menu }: LaneTileProps) {
  const { t } = useTranslation("live");
  const { phase } = lane.state;
  const isOpen = phase === "ready" || phase === "going";
  const isDoubted = phase === "done" && lane.in.doubts.length > 0 && asksNow(live);
  // Beside a stage that is large, a lane is too narrow for two answers at its side.
  const isNarrow = (tool.laneWidth ?? usualWidth) < 12 || (isDoubted && clockOf(live.test) === "own");
  const { press, second } = tool;
  const { test } = live;
  const asked = tool.answers?.({ live, lane }) ?? null;
  return (
    <li
      className={css.lane}
      data-phase={phase}
      data-warning={isOpen && (tool.isWarning?.(lane) ?? false)}
      data-lane={lane.lane}
      data-narrow={isNarrow}
      data-doubt={isDoubted}
      aria-label={t("lane.name", { lane: lane.lane, bib: lane.in.who.bib })}
    >
      {isOpen && press !== undefined ? (
        <PressArea {...{ test, tool, lane }} onPress={(timeStamp) => press(live, lane, timeStamp)}>
          <LaneHead lane={lane} isShifted={tool.digits === "typed"} />
          <tool.Lane live={live} lane={lane} />
        </PressArea>
      ) : (
        <div className={css.body}>
          <LaneHead lane={lane} isShifted={tool.digits === "typed"} aside={menu} />
          {isOpen && <tool.Lane live={live} lane={lane} />}
          {phase === "done" && (
            <LaneDone live={live} lane={lane}>
              {tool.Done !== undefined && <tool.Done {...{ live, lane, correct }} />}
            </LaneDone>
          )}
          {phase === "aside" && <p className="quiet">{t("lane.aside")}</p>}
        </div>
      )}
      {isOpen && second !== undefined && (
        <SecondButton
          {...{ test, tool, lane }}
          onPress={(timeStamp) => second.press(live, lane, timeStamp)}
        />
      )}
      {phase === "done" && asked !== null && <div className={css.answers}>{asked}</div>}
      {phase === "done" && asked === null && onCorrect !== null && (
        <Answers {...{ lane, isDoubted, onCorrect }} />
      )}
    </li>
  );
}

interface AnswersProps {
  readonly lane: LiveLane;
  /** True if the result is doubtful and asked about. */
  readonly isDoubted: boolean;
  readonly onCorrect: () => void;
}

/** What can be done with a result: correct it, or say that it is right where it is in doubt. */
function Answers({ lane, isDoubted, onCorrect }: AnswersProps) {
  const { t } = useTranslation("live");
  const { who, doubted } = lane.in;
  if (isDoubted && doubted !== null)
    return (
      <div className={css.answers}>
        <BothAnswers key={doubted} attemptId={doubted} bib={who.bib} onCorrect={onCorrect} />
      </div>
    );
  return (
    <button
      type="button"
      className={`small strong ${css.second}`}
      aria-label={t("lane.correctWho", { bib: who.bib })}
      onClick={onCorrect}
    >
      {t("lane.correct")}
    </button>
  );
}

interface HeadProps {
  readonly lane: LiveLane;
  /** True if the lane's key works with Shift, since digits alone are typed. */
  readonly isShifted: boolean;
  readonly aside?: ReactNode;
}

/** Shows the lane's number (its key, but for the last three), the bib and the name. */
function LaneHead({ lane, isShifted, aside }: HeadProps) {
  const { t } = useTranslation("live");
  const { who } = lane.in;
  return (
    <Row as="span" gap={2} lines={1} align="center" className={css.head}>
      <kbd className={isShifted ? css.shift : css.key}>
        {isShifted ? t("lane.shift", { key: lane.key }) : lane.key}
      </kbd>
      <strong className={`numeral ${css.bib}`}>{who.bib}</strong>
      <span className={css.name}>{who.name}</span>
      {aside}
    </Row>
  );
}

interface PressProps {
  readonly test: Live["test"];
  readonly tool: LiveTool<Live["test"]>;
  readonly lane: LiveLane;
  readonly onPress: (timeStamp: number) => void;
  readonly children?: ReactNode;
}

/** What a press on a lane takes is a time where one clock runs for all: no finger on it is ignored (`useStillness`). */
function runningKey(test: Live["test"]): { readonly "data-running-key"?: true } {
  return clockOf(test) === "common" ? { "data-running-key": true } : {};
}

function PressArea({ test, tool, lane, onPress, children }: PressProps) {
  const label = tool.usePressLabel?.()(lane);
  return (
    <button
      type="button"
      className={css.press}
      {...runningKey(test)}
      aria-keyshortcuts={tool.digits === "typed" ? `Shift+${lane.key}` : lane.key}
      {...onDown(onPress)}
    >
      <span className="unseen">{label}</span>
      {children}
    </button>
  );
}

function SecondButton({ test, tool, lane, onPress }: PressProps) {
  const { t } = useTranslation("live");
  const label = tool.second?.useLabel() ?? "";
  return (
    <button
      type="button"
      className={`small strong ${css.second}`}
      aria-keyshortcuts={`Shift+${lane.key}`}
      {...runningKey(test)}
      {...onDown(onPress)}
    >
      <span className="unseen">{t("lane.for", { lane: lane.lane })}</span>
      {label}
      <kbd className={css.shift}>{t("lane.shift", { key: lane.key })}</kbd>
    </button>
  );
}
