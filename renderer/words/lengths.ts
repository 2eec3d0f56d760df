import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { keptCell } from "../app/cell.ts";

const unit = keptCell(localStorage, "lengths", (kept): LengthUnit => (kept === "in" ? "in" : "cm"));

/** Returns this desk's unit for reading and writing lengths; kept from day to day. */
export function useLengthUnit(): { lengths: LengthUnit; setLengths: (lengths: LengthUnit) => void } {
  return { lengths: unit.use(), setLengths: unit.set };
}
