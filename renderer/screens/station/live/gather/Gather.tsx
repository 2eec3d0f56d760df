import { type Ref, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { clockOf } from "../../../../../electron/domain/heats/fold.ts";
import type { LengthUnit } from "../../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../../electron/domain/tests/registry.ts";
import { tell } from "../../../../app/messages.ts";
import { NumberField } from "../../../../parts/controls/NumberField.tsx";
import { BigKey } from "../../../../tests/live/BigKey.tsx";
import { bind } from "../../../../tests/live/bind.ts";
import { keysOfLanes, type LiveKeys, useLiveKeys } from "../../../../tests/live/liveKeys.ts";
import type { HeatView, LiveHeat } from "../../../../tests/live/types.ts";
import { HistoryDialog } from "../../HistoryDialog.tsx";
import { Recent } from "../../Recent.tsx";
import type { AttemptView, RecentAttempt } from "../../types.ts";
import { startHeat } from "../sync/useLive.ts";
import { useTableClock } from "../sync/useTableClock.ts";
import css from "./Gather.module.css";
import { GatherLane } from "./GatherLane.tsx";
import { keysOfLane } from "./gatherKeys.ts";
import { NextUp } from "./NextUp.tsx";
import type { Gathering } from "./useGather.ts";

interface LastMarksProps {
  readonly recent: readonly RecentAttempt[];
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
}

interface GatherProps extends LastMarksProps {
  readonly test: TestCode;
  readonly view: HeatView;
  readonly heat: LiveHeat | null;
  readonly lanes: number;
  readonly setLanes: (lanes: number) => void;
  readonly gathering: Gathering;
}

/** Shows, before the start, the athletes in the lanes, the next ones, and the key that starts the clock. */
export function Gather(props: GatherProps) {
  const { test, parameters, view, heat, lanes, setLanes, gathering, recent, lengths, onCorrect } = props;
  const { t } = useTranslation("live");
  const [opened, setOpened] = useState<number | null>(null);
  const [bib, setBib] = useState("");
  const bibInput = useRef<HTMLInputElement>(null);
  const taken = heat?.lane ?? [];
  const count = Math.max(lanes, heat?.lanes ?? 0, ...taken.map(({ lane }) => lane));
  const isFull = taken.length >= count;
  const mayStart = heat !== null && taken.length > 0 && clockOf(test) === "common";
  const start = (timeStamp: number) => heat !== null && startHeat(heat, timeStamp);
  useTableClock(mayStart ? heat.heatId : null);
  const callNext = () => void gathering.callNext();
  const open = taken.find(({ lane }) => lane === opened) ?? null;

  const more = () => setLanes(Math.max(lanes, count) + 1);
  function fewer(): void {
    const next = Math.max(1, Math.min(lanes, count) - 1);
    setLanes(next);
    // A heat that was called has the lanes that it was called into.
    if (heat !== null) tellFewer(count, next);
  }

  async function place(wanted: string): Promise<void> {
    if (wanted.trim() === "") return;
    // A refused bib stays, to be seen and changed.
    if ((await gathering.placeBib(wanted)) !== "placed") return;
    setBib("");
    bibInput.current?.blur();
  }
  function typeDigit(digit: string): void {
    setBib((typed) => typed + digit);
    bibInput.current?.focus();
  }
  useLiveKeys(
    () => ({
      ...(open === null ? keysOfDigits(typeDigit) : keysOfLane(open, gathering, () => setOpened(null))),
      ...keysOfLanes((lane) => setOpened(opened === lane ? null : lane), true),
      ...(isFull ? {} : bind(["N", callNext])),
      ...(mayStart ? bind(["Space", start]) : {}),
      ...bind(["M", more], ["F", fewer]),
    }),
    (scanned) => void place(scanned),
  );
  return (
    <div className={css.gather} data-test={test}>
      <div className={css.main}>
        <div className={css.acts}>
          {/* Each keeps its place: what is pressed twice must not start the clock, and no lane may move. */}
          <span className={css.act} data-kept={isFull}>
            <BigKey kind={mayStart ? "plain" : "next"} size="large" hint="N" onPress={callNext}>
              {t("gather.callNext")}
            </BigKey>
          </span>
          {clockOf(test) === "common" && (
            <span className={css.act} data-kept={!mayStart}>
              <BigKey kind="next" size="large" hint="Space" onPress={start}>
                {t("gather.start", { count: mayStart ? taken.length : count })}
              </BigKey>
            </span>
          )}
          <BibBox bib={bib} setBib={setBib} onPlace={() => void place(bib)} inputRef={bibInput} />
        </div>
        <ol className={css.lanes}>
          {Array.from({ length: count }, (_none, index) => index + 1).map((lane) => (
            <GatherLane
              key={lane}
              {...{ test, lane, count, gathering }}
              taken={taken.find((each) => each.lane === lane) ?? null}
              isOpen={opened === lane}
              onOpen={() => setOpened(opened === lane ? null : lane)}
            />
          ))}
        </ol>
        <div className={css.count}>
          <span>{t("gather.lanes", { count })}</span>
          <BigKey hint="F" onPress={fewer}>
            {t("gather.fewer")}
          </BigKey>
          <BigKey hint="M" onPress={more}>
            {t("gather.more")}
          </BigKey>
          {taken.length > 0 && <span className={`small quiet ${css.how}`}>{t("gather.change")}</span>}
        </div>
      </div>
      <div className={css.last}>
        <LastMarks {...{ recent, parameters, lengths, onCorrect }} />
      </div>
      <aside className={css.side}>
        <NextUp view={view} onPick={(picked) => void place(`${picked}`)} />
      </aside>
    </div>
  );
}

/** Says that the lanes of this heat stay, and how many the next one has. */
function tellFewer(count: number, next: number): void {
  const sentence = { key: "live:gather.keeps", values: { count, next } } as const;
  tell({ tone: "note", about: { group: "heat" }, sentence });
}

function keysOfDigits(type: (digit: string) => void): LiveKeys {
  return bind(...[..."0123456789"].map((digit) => [digit, () => type(digit)] as const));
}

interface BibBoxProps {
  readonly bib: string;
  readonly setBib: (typed: string) => void;
  readonly onPlace: () => void;
  readonly inputRef: Ref<HTMLInputElement>;
}

/** Takes digits typed before the start, whatever has the focus, for an athlete who is not next in turn. */
function BibBox({ bib, setBib, onPlace, inputRef }: BibBoxProps) {
  const { t } = useTranslation("live");
  return (
    <div className={css.bibBox}>
      <NumberField
        label={t("gather.bib")}
        value={bib}
        onChange={setBib}
        onEnter={onPlace}
        inputRef={inputRef}
        maxLength={6}
      />
    </div>
  );
}

/** Number of marks shown, about the last heat; older ones are on the athletes' own pages. */
const few = 6;

/** Lists the newest attempts, to be corrected after their heat is over. */
function LastMarks({ recent, parameters, lengths, onCorrect }: LastMarksProps) {
  const [shown, setShown] = useState<AttemptView | null>(null);
  if (recent.length === 0) return null;
  // A question is never left out, whatever came after it.
  const some = recent.filter(({ doubts }, index) => index < few || doubts.length > 0);
  return (
    <>
      <Recent recent={some} {...{ parameters, lengths, onCorrect }} onHistory={setShown} />
      {shown !== null && <HistoryDialog attempt={shown} lengths={lengths} onClose={() => setShown(null)} />}
    </>
  );
}
