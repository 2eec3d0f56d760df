import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import type { Board } from "../../../electron/api/board/schemas.ts";
import { useTRPC } from "../../app/client.tsx";
import { useKeys } from "../../app/keys.ts";
import { useReady } from "../../app/ready.ts";
import { dayOver } from "../../app/table.ts";
import css from "./BoardScreen.module.css";
import { CallStrip } from "./CallStrip.tsx";
import { FloorScene } from "./FloorScene.tsx";
import { Head } from "./Head.tsx";
import { NewestScene } from "./NewestScene.tsx";
import { Rhythm } from "./Rhythm.tsx";
import { useDrift, useRotation, useWide } from "./rotation.ts";
import { atTheEnd, type Scene, scenesOf } from "./scenes.ts";
import { useTotals } from "./totals.ts";
import { rowsOfPage, Wall } from "./Wall.tsx";

/** Shows the hall's board: only what each athlete agreed to, and nobody is ever last on it. */
export function BoardScreen() {
  const [round, setRound] = useState(0);
  const data = useBoard(round);
  const { t } = useTranslation("board");
  const [isBlank, setBlank] = useState(false);
  const turn = () => setBlank(!isBlank);
  useKeys({ H: turn });
  useReady(data !== undefined);
  const isOver = dayOver.use();
  const hidden = isBlank || data?.hidden === true;
  return (
    <div
      className={css.board}
      data-hidden={hidden}
      {...(hidden && { "aria-label": t("hidden"), role: "img" })}
    >
      {data !== undefined && !hidden && <Hall board={isOver ? atTheEnd(data) : data} onRound={setRound} />}
    </div>
  );
}

/** Returns the board with the part of each wall that this round shows; without an answer, the last one there was. */
function useBoard(round: number): Board | undefined {
  const trpc = useTRPC();
  const asked = { wall: { rows: rowsOfPage, round } };
  const { data } = useQuery(trpc.board.view.queryOptions(asked, { placeholderData: keepPreviousData }));
  const last = useRef(data);
  if (data !== undefined) last.current = data;
  return last.current;
}

interface HallProps {
  readonly board: Board;
  /** Called with how often all scenes were shown, before the first of them is over. */
  readonly onRound: (round: number) => void;
}

function Hall({ board, onRound }: HallProps) {
  const { t } = useTranslation("board");
  const scenes = scenesOf(board, useWide() ? 3 : 2);
  const turn = useRotation(scenes, board.newest);
  const scene = scenes[turn.index] ?? { kind: "newest" };
  useEffect(() => onRound(turn.round), [turn.round, onRound]);
  return (
    <div className={css.sheet} data-drift={useDrift()}>
      <Head board={board} figures={scene.kind !== "floor" && scene.kind !== "closing"} />
      <main className={css.main}>
        <section
          className={css.scene}
          key={`${turn.index} ${scene.kind}`}
          aria-label={t(`scene.${scene.kind}`)}
        >
          <Shown scene={scene} board={board} round={turn.round} news={turn.news} />
        </section>
      </main>
      {scene.kind !== "floor" && board.day?.state !== "closed" && <CallStrip calls={board.calls} />}
      <Rhythm scenes={scenes} turn={turn} />
    </div>
  );
}

interface ShownProps {
  readonly scene: Scene;
  readonly board: Board;
  readonly round: number;
  readonly news: boolean;
}

function Shown({ scene, board, round, news }: ShownProps) {
  switch (scene.kind) {
    case "newest":
      return <NewestScene newest={board.newest} firsts={board.firsts} round={round} fresh={news} />;
    case "walls":
      return <WallsScene walls={scene.walls} />;
    case "floor":
      return <FloorScene calls={board.calls} heats={board.heats} totals={board.totals} />;
    case "closing":
      return <ClosingScene totals={board.totals} />;
  }
}

/** Shows two or three tests side by side, each with today's gains: the largest first, and nobody last. */
function WallsScene({ walls }: { readonly walls: Board["walls"] }) {
  return (
    <div className={css.walls}>
      {walls.map((wall) => (
        <Wall key={wall.test} {...wall} />
      ))}
    </div>
  );
}

/** The end of the day: thanks, what all of those who are shown did together, and until next time. Nobody is named. */
function ClosingScene({ totals }: Pick<Board, "totals">) {
  const { t } = useTranslation("board");
  const { news, done } = useTotals()(totals);
  const figures = [...news, ...done];
  return (
    <div className={css.closing}>
      <h2 className={css.thanks}>{t("closing.thanks")}</h2>
      <ul className={`quiet ${css.figures}`} data-count={figures.length}>
        {figures.map(({ number, words }) => (
          <li key={words}>
            <strong>{number}</strong> {words}
          </li>
        ))}
      </ul>
      {totals.bests > 0 && (
        <p className={`quiet strong ${css.next}`}>
          {t("closing.byChance", { byChance: totals.bestsByChance })}
        </p>
      )}
      <p className={`quiet strong ${css.next}`}>{t("closing.next")}</p>
    </div>
  );
}
