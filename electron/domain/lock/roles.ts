import type { TestCode } from "../tests/registry.ts";

/**
 * The role of a caller. The carrier decides it (the shell by the window's host, and for the desk by its lock); the API
 * decides what each may do. `locked` is a desk that nobody may use until the PIN is given.
 */
export const roles = ["organiser", "check-in", "station", "second-judge", "board", "locked"] as const;
export type Role = (typeof roles)[number];

/** The caller's role and, for a station and for whoever judges beside it, its test. */
export interface Caller {
  readonly role: Role;
  /** The test; null for every station (the organiser's own desk) and for other roles. */
  readonly station: TestCode | null;
}
