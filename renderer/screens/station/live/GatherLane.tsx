import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/Button.tsx";
import css from "./Gather.module.css";
import { keyOfLane } from "./liveKeys.ts";
import type { HeatLane } from "./types.ts";
import type { Gathering } from "./useGather.ts";

interface GatherLaneProps {
  readonly lane: number;
  readonly taken: HeatLane | null;
  readonly count: number;
  readonly gathering: Gathering;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}

/** A lane before the start: free, or with somebody in it who can be moved, sent back or marked absent. */
export function GatherLane({ lane, taken, count, gathering, isOpen, onOpen }: GatherLaneProps) {
  const { t } = useTranslation("live");
  const head = (
    <span className={css.who}>
      <kbd className={css.key}>{keyOfLane(lane)}</kbd>
      {taken === null ? (
        <span className={css.free}>{t("gather.free")}</span>
      ) : (
        <>
          <strong className={css.bib}>{taken.who.bib}</strong>
          <span className={css.name}>{taken.who.name}</span>
        </>
      )}
    </span>
  );
  if (taken === null) return <li className={css.lane}>{head}</li>;
  return (
    <li className={css.lane} data-taken="true">
      <button type="button" className={css.open} aria-expanded={isOpen} onClick={onOpen}>
        {head}
      </button>
      {isOpen && <LaneActs taken={taken} count={count} gathering={gathering} />}
    </li>
  );
}

interface LaneActsProps {
  readonly taken: HeatLane;
  readonly count: number;
  readonly gathering: Gathering;
}

/** What can be done with somebody who has not begun. */
export function LaneActs({ taken: { who, lane }, count, gathering }: LaneActsProps) {
  const { t } = useTranslation("live");
  const others = Array.from({ length: count }, (_none, index) => index + 1).filter((each) => each !== lane);
  return (
    <div className={css.menu}>
      <Button onPress={() => gathering.sendBack(who.athleteId)}>{t("gather.sendBack")}</Button>
      <Button onPress={() => gathering.absent(who.athleteId)}>{t("gather.absent")}</Button>
      {others.length > 0 && (
        <fieldset className={css.moves}>
          <legend>{t("gather.move")}</legend>
          {others.map((to) => (
            <Button
              key={to}
              label={t("gather.moveTo", { lane: to })}
              onPress={() => gathering.move(who.athleteId, to)}
            >
              {keyOfLane(to)}
            </Button>
          ))}
        </fieldset>
      )}
    </div>
  );
}
