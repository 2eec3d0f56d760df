import type { MouseEvent } from "react";
import { useTranslation } from "react-i18next";
import { protocols, type TestCode } from "../../../../../electron/domain/tests/registry.ts";
import { useStanding } from "../../../../app/standing.tsx";
import { useTestWords } from "../../../../app/testWords.ts";
import { BigKey } from "../../../../tests/live/BigKey.tsx";
import { keyOfLane } from "../../../../tests/live/liveKeys.ts";
import type { HeatLane } from "../../../../tests/live/types.ts";
import css from "./Gather.module.css";
import { otherVariant } from "./gatherKeys.ts";
import type { Gathering } from "./useGather.ts";

interface GatherLaneProps {
  readonly test: TestCode;
  readonly lane: number;
  readonly taken: HeatLane | null;
  readonly count: number;
  readonly gathering: Gathering;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}

/** Shows a lane before the start: free, or with an athlete who can be moved, sent back or marked absent. */
export function GatherLane({ test, lane, taken, count, gathering, isOpen, onOpen }: GatherLaneProps) {
  const { t } = useTranslation("live");
  const head = (
    <span className={css.who}>
      {taken === null ? (
        // Before the start digits are a bib: a lane that nobody has yet has a number, and no key.
        <span className="quiet">{t("gather.freeLane", { lane })}</span>
      ) : (
        <>
          <kbd className={css.key}>{t("lane.shift", { key: keyOfLane(lane) })}</kbd>
          <strong className={`numeral ${css.bib}`}>{taken.who.bib}</strong>
          <span className="one-line">{taken.who.name}</span>
        </>
      )}
    </span>
  );
  if (taken === null) return <li className={css.lane}>{head}</li>;
  return (
    <li className={css.lane} data-taken="true" data-open={isOpen}>
      <button
        type="button"
        className={css.open}
        aria-expanded={isOpen}
        aria-keyshortcuts={`Shift+${keyOfLane(lane)}`}
        onMouseDown={keepFocus}
        onClick={onOpen}
      >
        {head}
      </button>
      {protocols[test].variants.length > 1 && <Variant test={test} taken={taken} gathering={gathering} />}
      {isOpen && <LaneActs taken={taken} count={count} gathering={gathering} hints />}
    </li>
  );
}

/** Leaves the focus where it is at a press of the mouse, so that Space still starts the heat. */
function keepFocus(event: MouseEvent): void {
  event.preventDefault();
}

interface VariantProps {
  readonly test: TestCode;
  readonly taken: HeatLane;
  readonly gathering: Gathering;
}

/** Shows the athlete's variant; a press changes it to the other. Marks of the two never compare. */
function Variant({ test, taken, gathering }: VariantProps) {
  const { t } = useTranslation("live");
  const testWord = useTestWords();
  const { variant, who } = taken;
  const words = testWord(test, `choice.variant.${variant}`);
  return (
    <button
      type="button"
      className={`small strong ${css.variant}`}
      data-variant={variant}
      aria-label={t("gather.variant", { bib: who.bib, how: words })}
      onMouseDown={keepFocus}
      onClick={() => gathering.setVariant(who.athleteId, otherVariant(taken))}
    >
      {words}
    </button>
  );
}

interface LaneActsProps {
  readonly taken: HeatLane;
  readonly count: number;
  readonly gathering: Gathering;
  /** True to show the keys, where they work. */
  readonly hints?: boolean;
}

/** Lists the actions on an athlete who has not begun. */
export function LaneActs({ taken, count, gathering, hints = false }: LaneActsProps) {
  const { t } = useTranslation("live");
  const { post } = useStanding();
  const { who, lane } = taken;
  const others = Array.from({ length: count }, (_none, index) => index + 1).filter((each) => each !== lane);
  return (
    <div className={css.menu}>
      <BigKey {...(hints && { hint: "B" })} onPress={() => gathering.sendBack(who.athleteId)}>
        {t("gather.sendBack")}
      </BigKey>
      <BigKey {...(hints && { hint: "A" })} onPress={() => gathering.absent(who.athleteId)}>
        {t("gather.absent")}
      </BigKey>
      {others.length > 0 && (
        <fieldset className={css.moves}>
          <legend>{t("gather.move")}</legend>
          {others.map((to) => (
            <BigKey
              key={to}
              label={t("gather.moveTo", { lane: to })}
              onPress={() => gathering.move(who.athleteId, to)}
            >
              {keyOfLane(to)}
            </BigKey>
          ))}
        </fieldset>
      )}
      {post.role !== "organiser" && <p className="small quiet">{t("gather.skipAsk")}</p>}
    </div>
  );
}
