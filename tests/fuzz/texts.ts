/** Texts changed by letters, words and lines, as people, other programs and bad people do. */
import type { Dice } from './random.ts';

const STRANGE = [
  '',
  '0',
  '-1',
  '1e9',
  '999999999999',
  '0x10',
  'NaN',
  'null',
  '\u0000',
  '\ufeff',
  '\u202e',
  '½',
  '−',
  '{',
  '}',
  '[',
  ']',
  '"',
  '\\',
  '<',
  '>',
  '&',
  ';',
  ':',
  ',',
  '\n',
  '\r\n',
  '\t',
  '__proto__',
  'constructor',
  'L0',
  'R1000000',
];

export function changedText(text: string, dice: Dice): string {
  let changed = text;
  for (let times = 1 + dice.below(4); times > 0; times--) changed = changedOnce(changed, dice);
  return changed;
}

function changedOnce(text: string, dice: Dice): string {
  // Words, numbers and marks each stand alone.
  const words = text.match(/[\p{L}_]+|\d+|\s+|./gsu) ?? [];
  const at = dice.below(words.length + 1);
  const other = dice.below(words.length + 1);
  const put = (...parts: string[]): string => [...words.slice(0, at), ...parts, ...words.slice(at + 1)].join('');
  switch (dice.below(9)) {
    case 0:
      return put();
    case 1:
      return put(words[at] ?? '', words[at] ?? '');
    case 2:
      return put(words[other] ?? '');
    case 3:
      return put(dice.pick(STRANGE));
    case 4:
      return put(String(dice.pick([0, 1, -1, 2 ** 31, 1e21, 0.1, dice.below(5000)])));
    case 5:
      return words.slice(0, at).join('');
    case 6: {
      const lines = text.split('\n');
      const line = dice.below(lines.length);
      lines.splice(dice.below(lines.length + 1), dice.below(2), lines[line] as string);
      return lines.join('\n');
    }
    case 7:
      return put(String.fromCodePoint(dice.pick([dice.below(128), dice.below(0xd800), 0x1f9f6, 0xd800])));
    default:
      return put((words[at] ?? 'x').repeat(dice.pick([2, 10, 1000])));
  }
}

/** A JSON text with a value in it exchanged, taken away, or put where another was. */
export function changedJson(text: string, dice: Dice): string {
  let root: unknown;
  try {
    root = JSON.parse(text);
  } catch {
    return changedText(text, dice);
  }
  const places: { readonly holder: Record<string, unknown>; readonly key: string }[] = [];
  const walk = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const key of Object.keys(value)) {
      places.push({ holder: value as Record<string, unknown>, key });
      walk((value as Record<string, unknown>)[key]);
    }
  };
  walk(root);
  if (places.length === 0) return changedText(text, dice);
  for (let times = 1 + dice.below(3); times > 0; times--) {
    const { holder, key } = dice.pick(places);
    const other = dice.pick(places);
    switch (dice.below(6)) {
      case 0:
        delete holder[key];
        break;
      case 1:
        holder[key] = structuredClone(other.holder[other.key]);
        break;
      case 2:
        holder[key] = dice.pick<unknown>([
          null,
          true,
          '',
          'x',
          0,
          -1,
          1.5,
          1e300,
          2 ** 53,
          [],
          {},
          [[]],
          'L48',
          '#feffff01',
        ]);
        break;
      case 3:
        holder[dice.pick([other.key, '__proto__', 'extra', 'id'])] = holder[key];
        break;
      case 4:
        if (typeof holder[key] === 'number') holder[key] = (holder[key] as number) * dice.pick([-1, 0, 2, 1000, 0.5]);
        else if (typeof holder[key] === 'string') holder[key] = changedText(holder[key] as string, dice);
        break;
      default:
        if (Array.isArray(holder[key])) {
          const list = holder[key] as unknown[];
          if (list.length > 0)
            holder[key] = Array.from(
              { length: Math.min(3000, list.length * dice.pick([0, 2, 50])) },
              (_, at) => list[at % list.length],
            );
        }
    }
  }
  try {
    return JSON.stringify(root) ?? '';
  } catch {
    // Something was put into itself.
    return text.slice(0, dice.below(text.length));
  }
}
