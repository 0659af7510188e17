/** Yarn to wind and strands to cut, read from the text of a printed sheet. */
import { sectionUnder, type Section } from './page.ts';
import { rowsIn } from './table.ts';

export interface PrintedBall {
  readonly yarn: string;
  readonly role: 'main' | 'contrast';
  /** Its number in the steps; null where it has none. */
  readonly ball: number | null;
  readonly group: number | null;
  readonly rows: readonly [first: number, last: number];
  /** As printed, and with the share that is wound off more. */
  readonly metres: string;
  readonly toWind: string;
}

export interface PrintedStrands {
  readonly ids: readonly number[];
  readonly cm: number;
  readonly edge: 'left' | 'right' | 'both';
  readonly rows: readonly [first: number, last: number];
  /** On all of them together. */
  readonly wraps: number;
}

/** The balls, with so many percent more to be wound, and below those of a yarn that has several what all of them come to. */
export function ballsPrinted(
  sections: readonly Section[],
  percent: number,
): {
  readonly balls: readonly PrintedBall[];
  readonly sums: readonly { readonly yarn: string; readonly balls: number; readonly metres: string }[];
} {
  const section = sectionUnder(sections, /^Yarn to wind$/);
  if (!section) throw new Error('No yarn to wind');
  const more = `Metres + ${percent} %`;
  const titles = [false, true].flatMap((isLaid) =>
    [false, true].map((isWeighed) => [
      ...['Yarn', ...(isLaid ? ['Ball'] : [])],
      ...['For', 'Metres', ...(isWeighed ? ['Grams'] : []), more],
    ]),
  );
  const balls: PrintedBall[] = [];
  const sums: { yarn: string; balls: number; metres: string }[] = [];
  for (const wanted of titles) {
    for (const row of rowsIn(section, wanted)) {
      const cell = (title: string): string => (row[wanted.indexOf(title)] ?? []).join(' ');
      const [yarn, metres] = [cell('Yarn'), cell('Metres')];
      const [, ofAll, count] = /^(.+), all (\d+) balls$/.exec(yarn) ?? [];
      if (ofAll !== undefined) {
        sums.push({ yarn: ofAll, balls: Number(count), metres });
        continue;
      }
      const [, name = '', role] = /^(.+), (main|contrast)$/.exec(yarn) ?? [];
      const [, group, first, last = first] =
        /^(?:Group (\d+), |All else, )?rows? (\d+)(?:–(\d+))?$/i.exec(cell('For')) ?? [];
      if (first === undefined) throw new Error(`${yarn} is for: ${cell('For')}`);
      balls.push({
        yarn: name,
        role: role === 'main' ? 'main' : 'contrast',
        ball: cell('Ball') === '' ? null : Number(cell('Ball')),
        group: group === undefined ? null : Number(group),
        rows: [Number(first), Number(last)],
        metres,
        toWind: cell(more),
      });
    }
  }
  return { balls, sums };
}

/** All strands of main to cut, those that are cut alike together; empty where there are none. */
export function strandsPrinted(sections: readonly Section[]): PrintedStrands[] {
  const section = sectionUnder(sections, /^Strands of .+ to cut for wrapping$/);
  if (!section) return [];
  return rowsIn(section, ['Strand', 'Cut', 'For', 'Rows', 'Wraps']).map((row) => {
    const [numbers = '', cut = '', use = '', rows = '', wraps] = row.map((cell) => cell.join(' '));
    const ids = numbers.split(/, | and /).flatMap((run) => {
      const [from = 0, to = from] = run.split('–').map(Number);
      return Array.from({ length: to - from + 1 }, (_, at) => from + at);
    });
    const [, count, cm] = /^(\d+) of (\d+) cm$/.exec(cut) ?? [];
    if (Number(count) !== ids.length) throw new Error(`Strands ${numbers} are cut as ${cut}`);
    const [, edge = ''] = /^(Left|Right|Both) edges? of /.exec(use) ?? [];
    const [first = 0, last = first] = rows.split('–').map(Number);
    return {
      ids,
      cm: Number(cm),
      edge: edge.toLowerCase() as PrintedStrands['edge'],
      rows: [first, last],
      wraps: Number(wraps),
    };
  });
}
