/** Character references of XML (XML 1.0, 4.1 and 4.6), resolved. */

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** The text as a parser hands it on. */
export function unescaped(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(amp|lt|gt|quot|apos));/gi, (whole, hex, decimal, name) => {
    if (typeof name === 'string') return NAMED[name.toLowerCase()] ?? whole;
    const code = typeof hex === 'string' ? Number.parseInt(hex, 16) : Number(decimal);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}
