import { useTranslation } from "react-i18next";
import { mostExtra } from "../../../electron/domain/tests/agility/protocol.ts";
import { judge } from "../../../electron/domain/tests/judge.ts";
import { KeyHint } from "../../parts/controls/KeyHint.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { useSay } from "../../words/say.ts";
import { BigKey } from "../live/BigKey.tsx";
import type { LaneProps, LiveLane, StageProps } from "../live/tool.ts";
import css from "./CountTrial.module.css";
import { agree, change, next, press, useCounting } from "./control.ts";
import { type Counting, type CountName, countNames, goBack, goTo, isLast, stepBy } from "./counting.ts";
import shared from "./Trial.module.css";
import { TrialHead, TrialKeys } from "./TrialKeys.tsx";

interface CountTrialProps extends LaneProps<"agility"> {
  readonly trial: NonNullable<LiveLane<"agility">["state"]["trial"]>;
}

/** Counts a trial after the whistle: laps, extra quadrants, touches, a digit each; under fingers only the key below them saves. */
export function CountTrial({ live, lane, trial }: CountTrialProps) {
  const { t } = useTranslation("agility");
  const counting = useCounting(live, lane);
  if (counting === null) return null;
  const last = isLast(counting.at);
  return (
    <div className={shared.trial}>
      <TrialHead
        live={live}
        lane={lane}
        title={t(trial.landings > 0 ? "live.count.tapped" : "live.count.title")}
      />
      <div className={`${shared.top} ${css.counts}`}>
        {countNames.map((name) => (
          <CountColumn key={name} {...{ live, lane, counting, name }} />
        ))}
      </div>
      <TrialKeys live={live} lane={lane} trial={trial} />
      <Notice live={live} counting={counting} direction={trial.direction} />
      <fieldset className={css.digits} data-asked={counting.asked}>
        <legend className="unseen">
          {t("live.count.digits", { field: t(`live.count.${counting.at}`) })}
        </legend>
        {Array.from({ length: counting.at === "extra" ? mostExtra + 1 : 10 }, (_none, digit) => (
          <BigKey
            // biome-ignore lint/suspicious/noArrayIndexKey: a digit is its place
            key={digit}
            size="large"
            onPress={() => press(live, lane, digit)}
          >
            <kbd className={css.digit}>{digit}</kbd>
          </BigKey>
        ))}
      </fieldset>
      <Row gap={3} align="center" wrap className={`${shared.keys} ${css.acts}`}>
        {counting.asked ? (
          <Answers live={live} lane={lane} />
        ) : (
          <BigKey kind="next" size="large" hint="Enter" onPress={(timeStamp) => next(live, lane, timeStamp)}>
            {t(last ? "live.count.save" : "live.count.next")}
          </BigKey>
        )}
        {counting.at !== "laps" && !counting.asked && (
          <BigKey hint="Backspace" onPress={() => change(live, lane, goBack)}>
            {t("live.count.back")}
          </BigKey>
        )}
        {!counting.asked && (
          <span className={css.stepsBelow}>
            <Steps {...{ live, lane }} name={counting.at} />
          </span>
        )}
        <span className={`small quiet ${css.help}`}>{t("live.count.keys")}</span>
      </Row>
    </div>
  );
}

/** No comes first; yes takes a key that nobody presses by habit. */
function Answers({ live, lane }: Omit<CountTrialProps, "trial">) {
  const { t } = useTranslation("station");
  return (
    <>
      <BigKey
        kind="next"
        size="large"
        hint="Esc"
        onPress={() => change(live, lane, (each) => goTo(each, "laps"))}
      >
        {t("ask.no")}
      </BigKey>
      <BigKey hint="Y" onPress={(timeStamp) => agree(live, lane, timeStamp)}>
        {t("ask.yes")}
      </BigKey>
    </>
  );
}

interface CountColumnProps extends Omit<CountTrialProps, "trial"> {
  readonly counting: Counting;
  readonly name: CountName;
}

/** One of the three numbers, with its steppers; the current one is on tape. */
function CountColumn({ live, lane, counting, name }: CountColumnProps) {
  const { t } = useTranslation("agility");
  const field = t(`live.count.${name}`);
  const here = counting.at === name;
  return (
    <div className={css.column} data-here={here}>
      <button
        type="button"
        className={`strong ${css.value}`}
        aria-current={here ? "step" : undefined}
        onMouseDown={(event) => event.preventDefault()}
        onClick={() => change(live, lane, (each) => goTo(each, name))}
      >
        <span>{field}</span>
        <span className={css.number}>{counting[name] ?? "–"}</span>
      </button>
      <div className={css.steps}>
        <Steps {...{ live, lane, name }} isHere={here} />
      </div>
    </div>
  );
}

interface StepsProps extends LaneProps<"agility"> {
  readonly name: CountName;
  readonly isHere?: boolean;
}

/** One less and one more: more than nine laps are reached by these alone. */
function Steps({ live, lane, name, isHere = false }: StepsProps) {
  const { t } = useTranslation("agility");
  const field = t(`live.count.${name}`);
  const step = (by: 1 | -1) => change(live, lane, (each) => stepBy(each, name, by));
  return (
    <>
      <BigKey label={t("live.count.less", { field })} onPress={() => step(-1)}>
        −{isHere && <KeyHint keys="↓" />}
      </BigKey>
      <BigKey label={t("live.count.more", { field })} onPress={() => step(1)}>
        +{isHere && <KeyHint keys="↑" />}
      </BigKey>
    </>
  );
}

interface NoticeProps extends StageProps<"agility"> {
  readonly counting: Counting;
  readonly direction: "cw" | "ccw";
}

/** Shows the count's result, and questions before it is saved. */
function Notice({ live, counting, direction }: NoticeProps) {
  const { t } = useTranslation(["agility", "station"]);
  const say = useSay();
  const { laps, extra, touches, tooMany, asked } = counting;
  if (tooMany)
    return (
      <p className={`alert ${css.sum}`} role="alert">
        {t("live.count.extraTooMany")}
      </p>
    );
  if (laps === null || extra === null) return <p className={css.sum} />;
  const seen = { direction, laps, extra, touches: touches ?? 0 };
  const { refusal, questions } = judge("agility", live.parameters, [seen]);
  const said = refusal ?? questions[0];
  if (asked && said !== undefined)
    return (
      <p className={`alert ${css.sum}`} role="alert">
        {t("station:ask.title")} {say(said)}
      </p>
    );
  return (
    <p className={css.sum} role="status">
      <strong>{t("live.count.sum", { count: 4 * laps + extra })}</strong>
      {said !== undefined && <span className={css.said}> {say(said)}</span>}
    </p>
  );
}
