import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { grainsOf } from "../../../electron/domain/length.ts";
import { formatLength } from "../../../electron/domain/units.ts";
import { Check } from "../../parts/controls/Check.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { useShowNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps } from "../live/tool.ts";
import {
  agree,
  asksReach,
  enough,
  enter,
  isHeld,
  measureAgain,
  readingOf,
  refuse,
  saidOf,
  type Typing,
  useAuto,
} from "./control.ts";
import css from "./Entry.module.css";
import { heightsOf, keysOfJumps } from "./heights.ts";
import { Jumped } from "./Jumped.tsx";

/** Ms before an automatic entry: long enough to add a half or to delete a digit, short enough not to be waited for. */
const holdMs = 900;

interface VerticalEntryProps extends LaneProps<"vertical"> {
  readonly typing: Typing;
}

/** Shows the current measurement, large enough to read from the wall, and its result. */
export function VerticalEntry({ live, lane, typing, correct, last }: VerticalEntryProps) {
  const { t } = useTranslation(["vertical", "common"]);
  const { heights, trialsLeft, standingReach } = lane.state;
  const reach = asksReach(live, lane);
  const isAsked = saidOf(live, lane)?.state === "asked";
  const unit = t(`common:unit.${live.lengths}`);
  const label = reach
    ? t("live.reach")
    : t("live.touch", { number: heights.length + 1, count: heights.length + trialsLeft });
  return (
    <div className={css.entry}>
      <h2 className={css.label}>{label}</h2>
      <p className={`quiet ${css.how}`}>{t(reach ? "live.reachHow" : "live.touchHow")}</p>
      <p className={css.field} role="status" aria-label={`${label}: ${typing.text}`}>
        <span className={css.text}>{typing.text}</span>
        <span className={css.caret} aria-hidden="true" />
        <span className={css.unit}>{unit}</span>
      </p>
      <div className={css.outcome}>
        <Outcome live={live} lane={lane} />
        {typing.text === "" && (
          <JustSaved {...{ live, lane, last }} {...(correct !== undefined && { correct })} />
        )}
      </div>
      <div className={css.keys}>
        <div className={css.answer}>
          {isAsked ? (
            <>
              <BigKey kind="next" hint="Esc" onPress={() => refuse(live, lane)}>
                {t("live.no")}
              </BigKey>
              <BigKey hint="Y" onPress={(timeStamp) => agree(live, lane, timeStamp)}>
                {t("live.yes")}
              </BigKey>
            </>
          ) : (
            <BigKey
              kind="next"
              size="large"
              hint="Enter"
              onPress={(timeStamp) => enter(live, lane, timeStamp)}
            >
              {t(reach ? "live.keepReach" : "live.record")}
            </BigKey>
          )}
        </div>
        <div className={css.enough} data-kept={heights.length === 0}>
          <BigKey hint="E" onPress={(timeStamp) => enough(live, lane, timeStamp)}>
            {t("live.enough")}
          </BigKey>
        </div>
      </div>
      {/* Its place is kept before there is one: no key may move while somebody types. */}
      <p className={`strong ${css.reach}`} data-kept={standingReach === null}>
        {t("live.reachIs", {
          length: standingReach === null ? "" : formatLength(grainsOf(standingReach), live.lengths),
          unit,
        })}{" "}
        <BigKey kind="quiet" hint="M" pressed={reach} onPress={() => measureAgain(live, lane)}>
          {t("live.changeReach")}
        </BigKey>
      </p>
      <Auto live={live} lane={lane} typing={typing} />
    </div>
  );
}

/** Shows the sentence about the typed text, or the height of its jump. */
function Outcome({ live, lane }: Omit<VerticalEntryProps, "typing">) {
  const { t } = useTranslation(["vertical", "common"]);
  const say = useSay();
  const said = saidOf(live, lane);
  const reading = readingOf(live, lane);
  if (said?.state === "refused") {
    return (
      <p className={`alert ${css.refused}`} role="alert">
        {say(said.sentence)}
      </p>
    );
  }
  if (said?.state === "asked") {
    return (
      <p className={css.asked} role="alert">
        <strong className={css.sure}>{t("live.sure")}</strong> {said.questions.map(say).join(" ")}
      </p>
    );
  }
  const reach = lane.state.standingReach;
  if (reading.state === "refused" || asksReach(live, lane) || reach === null) {
    return <p className={css.reads}>{t(`live.how.${live.lengths}`)}</p>;
  }
  const length = formatLength(grainsOf(reading.length) - grainsOf(reach), live.lengths);
  return <p className={css.reads}>{t("live.reads", { length, unit: t(`common:unit.${live.lengths}`) })}</p>;
}

/** Says on a phone what went in last: a reading that enters itself would be gone without a word there. */
function JustSaved({ live, lane, correct, last }: Omit<VerticalEntryProps, "typing">) {
  const { t } = useTranslation(["vertical", "common"]);
  const show = useShowNumber();
  const { standingReach } = lane.state;
  const heights = heightsOf(lane);
  const height = heights.at(-1);
  const written = (grains: number) =>
    `${show(formatLength(grains, live.lengths))} ${t(`common:unit.${live.lengths}`)}`;
  if (standingReach === null) return last == null ? null : <div className={css.saved}>{last}</div>;
  if (height == null) {
    return <p className={css.saved}>{t("live.saved.reach", { length: written(grainsOf(standingReach)) })}</p>;
  }
  const number = heights.length;
  return (
    <p className={css.saved}>
      {t("live.saved.jump", { number })}{" "}
      <Jumped number={number} jump={keysOfJumps(lane).at(-1)} correct={correct}>
        <strong>{written(height)}</strong>
      </Jumped>
    </p>
  );
}

/** Enters three digits by itself after a moment; a text in inches may always go on. */
function Auto({ live, lane, typing }: VerticalEntryProps) {
  const { t } = useTranslation("vertical");
  const { isAuto, setAuto } = useAuto();
  const held = isHeld(live, lane);
  const latest = useRef({ live, lane });
  useEffect(() => {
    latest.current = { live, lane };
  });
  const { text } = typing;
  // biome-ignore lint/correctness/useExhaustiveDependencies: each change of the text starts the moment anew
  useEffect(() => {
    if (!held) return;
    const timer = setTimeout(
      () => enter(latest.current.live, latest.current.lane, performance.now()),
      holdMs,
    );
    return () => clearTimeout(timer);
  }, [held, text]);
  if (live.lengths !== "cm") return null;
  return (
    <div className={css.auto}>
      <Check checked={isAuto} onChange={setAuto}>
        {t("live.auto")}
      </Check>
      {held && (
        <Stack as="span" gap={1} className="small quiet">
          <span className={css.bar} style={{ animationDuration: `${holdMs}ms` }} aria-hidden="true" />
          {t("live.holding")}
        </Stack>
      )}
    </div>
  );
}
