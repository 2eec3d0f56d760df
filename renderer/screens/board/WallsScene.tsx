import type { Board } from "../../../electron/api/board/schemas.ts";
import { Wall } from "./Wall.tsx";
import css from "./WallsScene.module.css";

interface WallsSceneProps {
  readonly walls: Board["walls"];
  readonly round: number;
}

/** Two or three tests side by side, each with the gains of today: the largest first, and nobody last. */
export function WallsScene({ walls, round }: WallsSceneProps) {
  return (
    <div className={css.walls}>
      {walls.map(({ test, rows }) => (
        <Wall key={test} test={test} rows={rows} round={round} />
      ))}
    </div>
  );
}
