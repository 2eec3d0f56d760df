import type { AgilityParameters } from "../../../electron/domain/tests/agility/protocol.ts";
import { Cross } from "./Cross.tsx";

/** Both ways around the cross, with its size. */
export function Drawing({ parameters: { crossSize } }: { readonly parameters: AgilityParameters }) {
  return (
    <>
      <Cross direction="cw" size={crossSize} />
      <Cross direction="ccw" size={crossSize} />
    </>
  );
}
