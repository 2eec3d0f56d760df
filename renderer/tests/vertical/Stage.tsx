import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { formatLength } from "../../../electron/domain/units.ts";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import { useShowNumber } from "../../words/numbers.ts";
import { LengthsChoice } from "../LengthsChoice.tsx";
import { useLaneAtHand } from "../live/chosenLane.ts";
import { NumberPad } from "../live/NumberPad.tsx";
import type { Live, LiveLane, StageProps } from "../live/tool.ts";
import { addSign, asksReach, setText, useTyping } from "./control.ts";
import { VerticalEntry } from "./Entry.tsx";
import { bestOf, heightsOf, keysOfJumps } from "./heights.ts";
import { Jumped } from "./Jumped.tsx";
import css from "./Stage.module.css";
import { WallReach } from "./WallReach.tsx";

/** Shows the jumps of the current lane: the current measurement, the pad for fingers, and the best so far. */
export function VerticalStage({ live, correct, last }: StageProps<"vertical">) {
  const lane = useLaneAtHand(live);
  const { lengths, setLengths } = useLengthUnit();
  if (lane === null) return null;
  return (
    <div className={css.stage} data-test="vertical">
      <div className={css.head}>
        <p className={css.who}>
          <strong className={css.bib}>{lane.in.who.bib}</strong> {lane.in.who.name}
        </p>
        <LengthsChoice lengths={lengths} setLengths={setLengths} />
      </div>
      <Measured live={live} lane={lane} last={last} {...(correct !== undefined && { correct })} />
    </div>
  );
}

function Measured({ live, lane, correct, last }: StageProps<"vertical"> & { readonly lane: LaneAtHand }) {
  const { t } = useTranslation("vertical");
  const typing = useTyping(live, lane);
  const { trialsLeft, heights, phase } = lane.state;
  const first = asksReach(live, lane) && heights.length === 0;
  return (
    <>
      <div className={css.best}>
        {first ? <WallReach /> : <Trials lane={lane} lengths={live.lengths} correct={correct} />}
      </div>
      {trialsLeft > 0 && phase !== "aside" ? (
        <>
          <VerticalEntry {...{ live, lane, typing, last }} {...(correct !== undefined && { correct })} />
          <div className={css.pad}>
            <PadOf key={lane.in.who.athleteId} lane={lane} />
            <NumberPad
              unit={live.lengths}
              text={typing.text}
              onText={(text) => press(live, lane, typing.text, text)}
            />
          </div>
        </>
      ) : (
        <h2 className={css.done}>{t("live.done", { count: heights.length })}</h2>
      )}
    </>
  );
}

/** Names on the pad whose its digits are, and is new with each athlete; to those who listen the stage has said it. */
function PadOf({ lane }: { readonly lane: LaneAtHand }) {
  const { bib, name } = lane.in.who;
  return <p className={css.whose} data-whose={`${bib ?? ""} ${name}`} aria-hidden="true" />;
}

/** Types what a press on the pad adds like a key's sign, and takes away what it takes away. */
function press(live: Live<"vertical">, lane: LaneAtHand, before: string, text: string): void {
  if (text.length < before.length) setText(live, lane, text);
  else addSign(live, lane, text.slice(before.length), performance.now());
}

type LaneAtHand = NonNullable<ReturnType<typeof useLaneAtHand<"vertical">>>;

interface TrialsProps {
  readonly lane: LiveLane<"vertical">;
  readonly lengths: LengthUnit;
  readonly correct: StageProps<"vertical">["correct"];
}

/** Shows the best jump so far, large, and every trial in order, future ones too. */
function Trials({ lane, lengths, correct }: TrialsProps) {
  const { t } = useTranslation(["vertical", "common"]);
  const { trialsLeft } = lane.state;
  const heights = heightsOf(lane);
  const jumps = keysOfJumps(lane);
  const best = bestOf(heights);
  const show = useShowNumber();
  const unit = t(`common:unit.${lengths}`);
  const places = [...heights, ...Array.from({ length: trialsLeft }, () => undefined)];
  const bestAt = best === null ? -1 : heights.indexOf(best);
  return (
    <div className={css.trials}>
      <BigNumber
        size="hero"
        label={best === null ? t("live.noBest") : t("live.best")}
        number={best === null ? "–" : formatLength(best, lengths)}
        {...(best !== null && { unit })}
      />
      <ol className={css.list}>
        {places.map((height, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a trial is its place
          <li key={index} className={css.trial} data-best={index === bestAt} data-open={height == null}>
            <span>{t("live.trial", { number: index + 1 })}</span>
            <span className={css.height}>
              {height === undefined && t("live.open")}
              {height === null && t("live.cancelled")}
              {height != null && (
                <Jumped number={index + 1} jump={jumps[index]} correct={correct}>
                  {`${show(formatLength(height, lengths))} ${unit}`}
                </Jumped>
              )}
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}
