import css from "./Barcode.module.css";
import { barsOf } from "./barcode.ts";

/** The quiet zone on each side, in bars of the narrowest width. Source: ISO/IEC 15417 asks for ten. */
const quiet = 10;

/** A text as a barcode that a scanner types, with the text below it for when it does not. */
export function Barcode({ text }: { readonly text: string }) {
  const { width, bars } = barsOf(text);
  // The narrowest bar is two units wide.
  const aside = 2 * quiet;
  const path = bars.map((bar) => `M${bar.x} 0h${bar.width}v1h${-bar.width}z`).join("");
  return (
    <span className={css.barcode}>
      <svg
        role="img"
        aria-label={text}
        viewBox={`${-aside} 0 ${width + 2 * aside} 1`}
        preserveAspectRatio="none"
        shapeRendering="crispEdges"
      >
        <path d={path} />
      </svg>
      <span className={css.text}>{text}</span>
    </span>
  );
}
