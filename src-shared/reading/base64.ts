/** Bytes written as base64 (RFC 4648). */

const DIGITS = new Map(
  [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'].map((letter, value) => [
    letter.charCodeAt(0),
    value,
  ]),
);

/** The bytes, blanks and line ends between the letters let be; null for anything else. */
export function base64Bytes(text: string): Uint8Array | null {
  const bytes = new Uint8Array(Math.ceil((text.length * 3) / 4));
  let length = 0;
  let bits = 0;
  let held = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 0x20 || (code >= 0x09 && code <= 0x0d)) continue;
    if (code === 0x3d) return /^[=\s]*$/.test(text.slice(at)) ? bytes.subarray(0, length) : null;
    const value = DIGITS.get(code);
    if (value === undefined) return null;
    bits = (bits << 6) | value;
    held += 6;
    if (held >= 8) {
      held -= 8;
      bytes[length++] = (bits >> held) & 255;
    }
  }
  return bytes.subarray(0, length);
}
