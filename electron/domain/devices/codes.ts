/**
 * The symbols of a joining code: the digits and letters of Crockford's Base 32 (crockford.com/base32.html, from memory),
 * without I, L, O and U, so that nothing read aloud or copied from a screen is taken for something else.
 */
const symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const groupLength = 4;

/** Bytes of chance in a joining code: 40 bits, eight symbols. */
export const codeBytes = 5;

/** Writes bytes as symbols, five bits each; the number of bits has to be a multiple of five. */
export function codeFrom(bytes: Uint8Array): string {
  let bits = 0;
  let held = 0;
  let code = "";
  for (const byte of bytes) {
    held = (held << 8) | byte;
    bits += 8;
    while (bits >= 5) {
      bits -= 5;
      code += symbols.charAt((held >> bits) & 31);
    }
    held &= (1 << bits) - 1;
  }
  return code;
}

/** Reads a code as somebody typed it: any case and gaps, and the letters that look like digits as these digits. */
export function readCode(typed: string): string {
  return typed.toUpperCase().replaceAll(/[\s-]/g, "").replaceAll("O", "0").replaceAll(/[IL]/g, "1");
}

/** Writes a code or a fingerprint in groups of four, as people say it. */
export function inGroups(text: string, between: string): string {
  return (text.match(new RegExp(`.{1,${groupLength}}`, "g")) ?? []).join(between);
}
