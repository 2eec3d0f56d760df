import { useState } from "react";
import { useTranslation } from "react-i18next";
import { clockOf } from "../../../../electron/domain/heats/fold.ts";
import type { TestCode } from "../../../../electron/domain/protocols/protocol.ts";
import { BigKey } from "./BigKey.tsx";
import { bind } from "./bind.ts";
import css from "./Gather.module.css";
import { GatherLane } from "./GatherLane.tsx";
import { keysOfLanes, useLiveKeys } from "./liveKeys.ts";
import { NextUp } from "./NextUp.tsx";
import { SoundPanel } from "./SoundPanel.tsx";
import type { HeatView, LiveHeat } from "./types.ts";
import type { Gathering } from "./useGather.ts";
import { startHeat } from "./useLive.ts";

interface GatherProps {
  readonly test: TestCode;
  readonly view: HeatView;
  readonly heat: LiveHeat | null;
  readonly lanes: number;
  readonly setLanes: (lanes: number) => void;
  readonly gathering: Gathering;
}

/** Before the start: who is in which lane, who comes next, and the key that starts the clock. */
export function Gather({ test, view, heat, lanes, setLanes, gathering }: GatherProps) {
  const { t } = useTranslation("live");
  const [opened, setOpened] = useState<number | null>(null);
  const taken = heat?.lane ?? [];
  const count = Math.max(lanes, heat?.lanes ?? 0, ...taken.map(({ lane }) => lane));
  const isFull = taken.length >= count;
  const mayStart = heat !== null && taken.length > 0 && clockOf(test) === "common";
  const start = (timeStamp: number) => heat !== null && startHeat(heat, timeStamp);
  const callNext = () => void gathering.callNext();
  useLiveKeys(
    {
      ...keysOfLanes((lane) => setOpened(opened === lane ? null : lane)),
      ...(isFull ? {} : bind(["N", callNext])),
      ...(mayStart ? bind(["Space", start]) : {}),
      ...(opened === null ? {} : bind(["Escape", () => setOpened(null)])),
    },
    (bib) => void gathering.placeBib(bib),
  );
  return (
    <div className={css.gather} data-test={test}>
      <div className={css.main}>
        <div className={css.acts}>
          {!isFull && (
            <BigKey kind={mayStart ? "plain" : "next"} size="large" hint="N" onPress={callNext}>
              {t("gather.callNext")}
            </BigKey>
          )}
          {mayStart && (
            <BigKey kind="next" size="large" hint="Space" onPress={start}>
              {t("gather.start", { count: taken.length })}
            </BigKey>
          )}
          <span className={css.scan}>{t("gather.scan")}</span>
        </div>
        <ol className={css.lanes}>
          {Array.from({ length: count }, (_none, index) => index + 1).map((lane) => (
            <GatherLane
              key={lane}
              lane={lane}
              taken={taken.find((each) => each.lane === lane) ?? null}
              count={count}
              gathering={gathering}
              isOpen={opened === lane}
              onOpen={() => setOpened(opened === lane ? null : lane)}
            />
          ))}
        </ol>
        <div className={css.count}>
          <span>{t("gather.lanes", { count })}</span>
          <BigKey label={t("gather.fewer")} onPress={() => setLanes(Math.max(taken.length, lanes - 1))}>
            −
          </BigKey>
          <BigKey label={t("gather.more")} onPress={() => setLanes(lanes + 1)}>
            +
          </BigKey>
        </div>
      </div>
      <aside className={css.side}>
        <NextUp view={view} onPick={(bib) => void gathering.placeBib(`${bib}`)} />
        <SoundPanel />
      </aside>
    </div>
  );
}
