import { type ComponentProps, useCallback, useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { mostLanes } from "../../../../electron/domain/heats/heat.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import { definitionOf, type TestCode } from "../../../../electron/domain/tests/registry.ts";
import { dropReadings } from "../../../app/kept-drafts.ts";
import { useStanding } from "../../../app/standing.tsx";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { Answer } from "../../../parts/layout/Answer.tsx";
import { Cautions } from "../../../parts/layout/Cautions.tsx";
import { SoundsHere } from "../../../sound/soundsHere.ts";
import type { HeatView, LiveHeat } from "../../../tests/live/types.ts";
import { toolOf } from "../../../tests/tools.ts";
import type { AttemptView, RecentAttempt } from "../types.ts";
import { ClockDoubt } from "./ClockDoubt.tsx";
import { Gather } from "./gather/Gather.tsx";
import { useGather } from "./gather/useGather.ts";
import { LiveHead } from "./LiveHead.tsx";
import css from "./LiveStation.module.css";
import { Running } from "./run/Running.tsx";
import { soundsAt } from "./soundsAt.ts";
import { resumeOutboxes } from "./sync/heatOutboxes.ts";
import { type ShownHolder, useHeatView } from "./sync/useHeatView.ts";
import { isRunning, useOutbox } from "./sync/useLive.ts";
import { useTapper } from "./sync/useTapper.ts";
import { useStillness } from "./useStillness.ts";

interface LiveStationProps {
  readonly test: TestCode;
  readonly lengths: LengthUnit;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  /** The station's newest attempts: a lane's result can be corrected from here. */
  readonly recent: readonly RecentAttempt[];
  readonly onCorrect: (attempt: AttemptView) => void;
  /** Chooses to enter results from paper. */
  readonly onPaper: () => void;
}

/** Runs a station's test live: call the next, start, tap; nothing is keyed afterwards. */
export function LiveStation(props: LiveStationProps) {
  const [holder, setHolder] = useState<ShownHolder>(undefined);
  const query = useHeatView(props.test, props.lengths, holder);
  const isOther = holder !== undefined;
  const isGone = isOther && query.data?.heat === null;
  const otherHeat = isOther ? (query.data?.heat ?? null) : null;
  const live = toolOf(props.test);
  const running = query.data?.heat?.state === "running" ? query.data.heat.heatId : null;
  const showOwn = useCallback(() => setHolder(undefined), []);
  useEffect(() => {
    if (isGone) showOwn();
  }, [isGone, showOwn]);
  useEffect(resumeOutboxes, []);
  useStillness();
  return (
    <div className={css.station} data-whole-window>
      <div className={css.top}>
        <LiveHead
          test={props.test}
          parameters={props.parameters}
          onPaper={props.onPaper}
          otherHeat={otherHeat}
        />
        <OtherHeats others={query.data?.others ?? []} shown={holder} onShow={setHolder} />
        {running !== null && live.silent !== true && <ClockDoubt key={running} heatId={running} />}
      </div>
      <SoundsHere value={soundsAt(otherHeat) === null}>
        <Answer query={query}>
          {(view) =>
            view.heat === null ? (
              <NoHeat {...{ view, showOwn }} {...props} />
            ) : (
              <OneHeat key={view.heat.heatId} {...{ view, showOwn }} heat={view.heat} {...props} />
            )
          }
        </Answer>
      </SoundsHere>
    </div>
  );
}

interface NoHeatProps extends LiveStationProps {
  readonly view: HeatView;
  /** Leads back to the own heat from one that is only looked at. */
  readonly showOwn: () => void;
}

/** Adds the cautions while no heat runs, when there is room. */
function Gathering(props: ComponentProps<typeof Gather>) {
  return (
    <>
      <Gather {...props} />
      <Cautions size="short" />
    </>
  );
}

function NoHeat(props: NoHeatProps) {
  useEffect(() => dropReadings(props.test), [props.test]);
  const { lanes, setLanes } = useLaneCount(props.test);
  const gathering = useGather(props.test, null, lanes, props.showOwn);
  return <Gathering {...{ ...props, lanes, setLanes, gathering }} heat={null} />;
}

interface OneHeatProps extends NoHeatProps {
  readonly heat: LiveHeat;
}

function OneHeat(props: OneHeatProps) {
  const { test, lengths, view, heat, onCorrect } = props;
  const { lanes, setLanes } = useLaneCount(test);
  const gathering = useGather(test, heat, lanes, props.showOwn);
  const outbox = useOutbox(heat);
  useTapper(heat);
  if (isRunning(heat, outbox)) {
    return <Running {...{ test, lengths, view, heat, outbox, gathering, onCorrect }} />;
  }
  return <Gathering {...{ ...props, lanes, setLanes, gathering }} />;
}

interface OtherHeatsProps {
  readonly others: HeatView["others"];
  readonly shown: ShownHolder;
  readonly onShow: (holder: ShownHolder) => void;
}

/** Lists who else holds a heat of this test, and whom they have in their lanes; the organiser can show each. */
function OtherHeats({ others, shown, onShow }: OtherHeatsProps) {
  const { t } = useTranslation("live");
  const isOrganiser = useStanding().post.role === "organiser";
  if (others.length === 0 && shown === undefined) return null;
  return (
    <Row as="section" gap={3} align="baseline" wrap className={css.others} aria-label={t("others.title")}>
      {shown !== undefined && <Button onPress={() => onShow(undefined)}>{t("others.back")}</Button>}
      {others.map((other) => (
        <OtherHeat key={other.heatId} other={other} {...(isOrganiser && { onShow })} />
      ))}
    </Row>
  );
}

interface OtherHeatProps {
  readonly other: HeatView["others"][number];
  /** Missing where this window may not look at it. */
  readonly onShow?: (holder: ShownHolder) => void;
}

function OtherHeat({ other: { holder, device, bibs }, onShow }: OtherHeatProps) {
  const { t } = useTranslation("live");
  const who = device ?? t(holder === null ? "others.table" : "others.gone");
  const key = bibs.length === 0 ? "others.empty" : "others.heat";
  return (
    <>
      <span>{t(key, { who, bibs: bibs.join(", ") })}</span>
      {onShow !== undefined && holder !== null && (
        <Button onPress={() => onShow(holder)}>{t("others.look", { who })}</Button>
      )}
    </>
  );
}

/** Returns the number of lanes of a station, a choice kept on this desk. */
function useLaneCount(test: TestCode): {
  readonly lanes: number;
  readonly setLanes: (lanes: number) => void;
} {
  const place = `live.lanes.${test}`;
  const [lanes, set] = useState(() => {
    const kept = Number(localStorage.getItem(place) ?? Number.NaN);
    return kept >= 1 && kept <= mostLanes ? Math.floor(kept) : definitionOf(test).figures.lanes;
  });
  function setLanes(wanted: number): void {
    const count = Math.min(mostLanes, Math.max(1, wanted));
    localStorage.setItem(place, String(count));
    set(count);
  }
  return { lanes, setLanes };
}
