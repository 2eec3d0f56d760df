import { useMemo } from "react";
import { encode } from "uqr";
import css from "./Devices.module.css";

/** Empty modules around the code: as many as ISO/IEC 18004 wants. */
const quiet = 4;

/** A text as a QR code, in black on white whatever the colours around it. */
export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { size, data } = useMemo(() => encode(text, { ecc: "M", border: quiet }), [text]);
  const dark = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : [])));
  return (
    <svg
      className={css.picture}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={dark.join("")} fill="#000" />
    </svg>
  );
}
