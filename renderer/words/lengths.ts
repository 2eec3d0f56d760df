import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { keptCell } from "../app/cell.ts";

const unit = keptCell(localStorage, "lengths", (kept): LengthUnit => (kept === "in" ? "in" : "cm"));

/** The unit in which this desk reads and writes lengths; kept from day to day. */
export function useLengthUnit(): { lengths: LengthUnit; setLengths: (lengths: LengthUnit) => void } {
  return { lengths: unit.use(), setLengths: unit.set };
}
