import type { AgilityParameters } from "../../../electron/domain/tests/agility/protocol.ts";
import { Cross } from "./Cross.tsx";

/** Draws both directions around the cross, with its size. */
export function Drawing({ parameters: { crossSize } }: { readonly parameters: AgilityParameters }) {
  return (
    <>
      <Cross direction="cw" size={crossSize} />
      <Cross direction="ccw" size={crossSize} />
    </>
  );
}
