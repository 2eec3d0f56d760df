/** Linear light of the three channels, 0 to 1. */
export type Light = readonly [red: number, green: number, blue: number];

/** Linear light of a channel of sRGB, 0 to 255: IEC 61966-2-1, as WCAG 2.2 uses it. */
function linearChannel(byte: number): number {
  const value = byte / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

/** Linear light of a colour as style sheets write it: "#1b2328". */
export function linear(hex: string): Light {
  const channel = (at: number) => linearChannel(Number.parseInt(hex.slice(at, at + 2), 16));
  return [channel(1), channel(3), channel(5)];
}

/** Linear light of a colour as a page computes it: "rgb(27, 35, 40)". */
export function computed(colour: string): Light {
  const [red = Number.NaN, green = Number.NaN, blue = Number.NaN, alpha = 1] = (
    colour.match(/[\d.]+/g) ?? []
  ).map(Number);
  if (!colour.startsWith("rgb") || Number.isNaN(red + green + blue) || alpha !== 1) {
    throw new Error(`${colour} is no plain colour.`);
  }
  return [linearChannel(red), linearChannel(green), linearChannel(blue)];
}

/** Contrast of two colours. Source: WCAG 2.2, relative luminance and contrast ratio. */
export function contrast(one: Light, other: Light): number {
  const light = ([red, green, blue]: Light) => 0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05;
  return Math.max(light(one), light(other)) / Math.min(light(one), light(other));
}
