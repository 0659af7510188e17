/** Telling a project file by what is in it, whatever it is called. */
import { outcome } from '../problem/index.ts';
import { FILE_FORMAT } from './migrate.ts';

/** As the program writes it, be it cut off or damaged further on. A byte order mark may stand before it. */
const BEGINS = new RegExp(`^(?:\\u00ef\\u00bb\\u00bf)?\\s*\\{\\s*"format"\\s*:\\s*"${FILE_FORMAT}"`);
const BYTES_LOOKED_AT = 1024;

/** True for what is, or began as, a project file; it need not be one that can be opened. */
export function isProjectFile(bytes: Uint8Array): boolean {
  const start = letterEachByte(bytes.subarray(0, BYTES_LOOKED_AT));
  if (BEGINS.test(start)) return true;
  const brace = /^(?:\u00ef\u00bb\u00bf)?\s*(?=\{)/.exec(start);
  if (!brace) return false;
  // Another program may have written the fields in another order. Letters beyond ASCII come out wrong, and do not matter.
  const whole = letterEachByte(bytes.subarray(brace[0].length));
  const read = outcome(() => JSON.parse(whole) as { readonly format?: unknown });
  return read.ok && read.value.format === FILE_FORMAT;
}

function letterEachByte(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) parts.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return parts.join('');
}
