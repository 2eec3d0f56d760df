import {
  type DevicePlace,
  devicePlaceSchema,
  type JoinedDevice,
  testAt,
} from "../../domain/devices/place.ts";
import { allRows, execute, firstRow, type ReadableDb, type WritableDb } from "../connection/database.ts";

/** A device of a day, with the time at which it joined (ISO 8601). */
export interface DeviceOfDay extends JoinedDevice {
  readonly joinedAt: string;
}

interface DeviceRow {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly test: string | null;
  readonly joinedAt: string;
}

const columns = "id, name, role, test, joined_at AS joinedAt";

function deviceOf({ id, name, role, test, joinedAt }: DeviceRow): DeviceOfDay {
  const place = devicePlaceSchema.parse(test === null ? { role } : { role, test });
  return { id, name, place, joinedAt };
}

/** Returns the devices of a day in the order in which they joined. */
export function devicesOf(db: ReadableDb, dayId: number): DeviceOfDay[] {
  const sql = `SELECT ${columns} FROM device WHERE day_id = @dayId ORDER BY joined_at, id`;
  return allRows<DeviceRow>(db, sql, { dayId }).map(deviceOf);
}

/** Returns the device of a day that holds the token with this hash; undefined when none does. */
export function deviceByToken(db: ReadableDb, dayId: number, tokenHash: string): DeviceOfDay | undefined {
  const sql = `SELECT ${columns} FROM device WHERE day_id = @dayId AND token_hash = @tokenHash`;
  const row = firstRow<DeviceRow>(db, sql, { dayId, tokenHash });
  return row === undefined ? undefined : deviceOf(row);
}

/** Adds a device, or gives one that is there another token: its answer was lost on the way, and it asked again. */
export function keepDevice(
  db: WritableDb,
  dayId: number,
  { id, name, place, joinedAt }: DeviceOfDay,
  tokenHash: string,
): void {
  const sql = `INSERT INTO device (id, day_id, name, role, test, token_hash, joined_at)
    VALUES (@id, @dayId, @name, @role, @test, @tokenHash, @joinedAt)
    ON CONFLICT (id) DO UPDATE SET token_hash = excluded.token_hash`;
  execute(db, sql, { id, dayId, name, ...columnsOf(place), tokenHash, joinedAt });
}

/** Gives a device another place; false when there is no such device. */
export function placeDevice(db: WritableDb, id: string, place: DevicePlace): boolean {
  const sql = "UPDATE device SET role = @role, test = @test WHERE id = @id";
  return execute(db, sql, { id, ...columnsOf(place) }).changes > 0;
}

/** Forgets a device; returns the hash of its token, undefined when there was none. */
export function removeDevice(db: WritableDb, id: string): string | undefined {
  const sql = "SELECT token_hash AS tokenHash FROM device WHERE id = @id";
  const row = firstRow<{ tokenHash: string }>(db, sql, { id });
  execute(db, "DELETE FROM device WHERE id = @id", { id });
  return row?.tokenHash;
}

/** A device that is no longer the table's, and the hash of the token by which it shows itself. */
interface ForgottenDevice {
  readonly id: string;
  readonly tokenHash: string;
}

/** Forgets all devices but those of one day (null: all of them), and returns them. */
export function removeDevicesBut(db: WritableDb, dayId: number | null): ForgottenDevice[] {
  const sql = "SELECT id, token_hash AS tokenHash FROM device WHERE day_id IS NOT @dayId";
  const rows = allRows<ForgottenDevice>(db, sql, { dayId });
  execute(db, "DELETE FROM device WHERE day_id IS NOT @dayId", { dayId });
  return rows;
}

function columnsOf(place: DevicePlace): { role: string; test: string | null } {
  return { role: place.role, test: testAt(place) };
}
