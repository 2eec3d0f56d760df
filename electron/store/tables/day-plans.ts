import {
  type PlanSettings,
  planSettings,
  type ToldFigures,
  toldFigures,
} from "../../domain/plan/settings.ts";
import { execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** The plan of a day as it is kept. Instants are ISO 8601. */
export interface KeptPlan {
  readonly settings: PlanSettings;
  readonly seed: number;
  readonly savedAt: string;
  /** What was told of it last; null until it was worked out. */
  readonly told: ToldFigures | null;
  readonly toldAt: string | null;
}

interface PlanRow extends Omit<KeptPlan, "settings" | "told"> {
  readonly settings: string;
  readonly told: string | null;
}

/** Returns what was planned for a day; undefined when nothing was. @throws ZodError for a row that is not by the schema */
export function planOfDay(db: ReadableDb, dayId: number): KeptPlan | undefined {
  const sql = `SELECT settings, seed, saved_at AS savedAt, told, told_at AS toldAt FROM day_plan WHERE day_id = @dayId`;
  const row = firstRow<PlanRow>(db, sql, { dayId });
  if (row === undefined) return undefined;
  const { settings, told, ...rest } = row;
  return {
    ...rest,
    settings: planSettings.parse(JSON.parse(settings)),
    told: told === null ? null : toldFigures.parse(JSON.parse(told)),
  };
}

/** Keeps what is planned for a day; its seed stays, and so does what was told of it. */
export function keepPlan(
  db: WritableDb,
  dayId: number,
  plan: Pick<KeptPlan, "settings" | "seed" | "savedAt">,
): void {
  const sql = `INSERT INTO day_plan (day_id, settings, seed, saved_at) VALUES (@dayId, @settings, @seed, @savedAt)
    ON CONFLICT DO UPDATE SET settings = excluded.settings, saved_at = excluded.saved_at`;
  execute(db, sql, { ...plan, dayId, settings: JSON.stringify(plan.settings) });
}

/** Keeps what was told of a day's plan; null forgets it. Changes nothing where nothing is planned. */
export function keepTold(db: WritableDb, dayId: number, told: ToldFigures | null, at: string): void {
  const sql = "UPDATE day_plan SET told = @told, told_at = @at WHERE day_id = @dayId";
  const isTold = told !== null;
  execute(db, sql, { dayId, told: isTold ? JSON.stringify(told) : null, at: isTold ? at : null });
}
