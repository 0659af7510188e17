/** Names of files that every platform takes. */
import { extname } from 'node:path';

/** Reserved device names of one platform, with or without an ending. */
const RESERVED = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;
/** Characters that some platform refuses in a name: controls, path separators, wildcards, quotes. */

const REFUSED = /[\u0000-\u001f\u007f-\u009f<>:"/\\|?*\u2028\u2029]|\p{Cs}|\p{Bidi_Control}/gu;
/** A file system's usual limit is 255 bytes for a name; what is added after it needs some. */
const MOST_BYTES = 180;

/**
 * `name` as the beginning of a file name: what a platform refuses becomes a
 * blank, names of more than `most` bytes are cut at a whole character.
 * `otherwise` where nothing is left.
 */
export function safeFileName(name: string, otherwise: string, most = MOST_BYTES): string {
  const blanked = name.normalize('NFC').replace(REFUSED, ' ').replace(/\s+/gu, ' ').trim();
  let kept = '';
  for (const character of blanked) {
    if (Buffer.byteLength(kept + character) > most) break;
    kept += character;
  }
  // A leading dot hides a file, a trailing one or a blank is dropped by one platform.
  const safe = kept.replace(/^[. ]+|[. ]+$/g, '');
  if (safe === '') return otherwise;
  return RESERVED.test(safe) ? `_${safe}` : safe;
}

/**
 * The names, no two of which any file system takes for one: such as differ in
 * large and small letters alone, or not at all, have a number behind them from
 * the second on.
 */
export function distinctNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    let own = name;
    for (let number = 2; taken.has(own.toUpperCase()); number++) own = `${name} (${number})`;
    taken.add(own.toUpperCase());
    return own;
  });
}

/**
 * The names under which files stand beside those that are there: one that is
 * taken has a number behind it, `rows (2).csv`, the same for all of them and
 * the lowest that none of them has yet.
 */
export async function numberedNames(
  names: readonly string[],
  isTaken: (name: string) => Promise<boolean>,
): Promise<Map<string, string>> {
  const taken: string[] = [];
  for (const name of names) if (await isTaken(name)) taken.push(name);
  for (let number = 2; ; number += 1) {
    const numbered = new Map(names.map((name) => [name, taken.includes(name) ? withNumber(name, number) : name]));
    if (
      !(await isSomeTaken(
        taken.map((name) => withNumber(name, number)),
        isTaken,
      ))
    )
      return numbered;
  }
}

async function isSomeTaken(names: readonly string[], isTaken: (name: string) => Promise<boolean>): Promise<boolean> {
  for (const name of names) if (await isTaken(name)) return true;
  return false;
}

function withNumber(name: string, number: number): string {
  const ending = extname(name);
  return `${name.slice(0, name.length - ending.length)} (${number})${ending}`;
}
