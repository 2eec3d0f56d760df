import { code128, type DrawingContext } from "bwip-js/generic";

/** A barcode in its own units: bars of a width at a place, `width` wide in all. */
export interface Bars {
  readonly width: number;
  readonly bars: readonly { readonly x: number; readonly width: number }[];
}

/**
 * Returns the bars of a text in Code 128 (ISO/IEC 15417), without the quiet zones on both sides.
 * @throws Error for characters that Code 128 has none for
 */
export function barsOf(text: string): Bars {
  return code128({ bcid: "code128", text, scale: 1 }, collecting());
}

/** A drawing that keeps the bars: a page draws them itself, as sharp as the printer is. */
function collecting(): DrawingContext<Bars> {
  const bars: { x: number; width: number }[] = [];
  let whole = 0;
  const nothing = () => undefined;
  return {
    // Two units for the narrowest bar: the middle of a bar of odd width would lie between two units.
    scale: () => [2, 2],
    measure: () => ({ width: 0, ascent: 0, descent: 0 }),
    init(width) {
      whole = width;
    },
    line: (x, _y, _x, _end, width) => void bars.push({ x: x - width / 2, width }),
    ...{ polygon: nothing, hexagon: nothing, ellipse: nothing, fill: nothing, text: nothing },
    end: () => ({ width: whole, bars }),
  };
}
