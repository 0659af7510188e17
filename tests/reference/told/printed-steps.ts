/** The steps of a printed sheet, read from the text of its pages. */
import type { OrderJson, StopJson } from '../knitter/index.ts';
import { sectionUnder, type Section } from './page.ts';
import { actRead, labels, type ReadAct } from './sentences.ts';
import { againRead, knitRead, orderRead, stopRead, type ReadStep } from './steps.ts';
import { joined, sentencesIn, tablesIn, type Row } from './table.ts';

const STEPS = ['Done', 'Counter reads', 'Before row', 'Carriage at', 'Do this', 'Then'];
const SHAPING = [
  ...['Done', 'Counter reads', 'Before row', 'Carriage at'],
  ...['Left edge', 'Right edge', 'Also', 'Stitches then', 'Knit to'],
];

/** The running order that the sheet tells; null where it tells none. */
export function stepsPrinted(sections: readonly Section[]): OrderJson | null {
  const section = sectionUnder(sections, /^Knitting it$/);
  if (!section) return null;
  const steps: ReadStep[] = [];
  let again = '';
  for (const told of tablesIn(section, [STEPS, SHAPING])) {
    if (told.kind === 'row') steps.push(stepRead(told.row));
    else if (again !== '' || /^Rows \d/.test(told.text)) again = `${again} ${told.text}`.trim();
    if (!again.endsWith('.')) continue;
    steps.push(...againRead(again, steps));
    again = '';
  }
  return orderRead(steps);
}

function stepRead(row: Row): ReadStep {
  if (row.length === STEPS.length) {
    const knit = joined(row[5]);
    return { stop: stopRead(headingOf(row), sentencesIn(row[4])), knit: knit === '' ? null : knitRead(knit) };
  }
  const stop = stopRead(headingOf(row), []);
  const acts = [
    ...shapingRead(joined(row[4]), 'left'),
    ...shapingRead(joined(row[5]), 'right'),
    ...sentencesIn(row[6]).map(actRead),
  ];
  return {
    stop: { ...stop, acts: inHandsOrder(acts) as StopJson['acts'] },
    knit: [stop.row ?? 0, Number(joined(row[8]))],
  };
}

/** Edges stand beside each other; what is cast off is cast off before anything else is shaped. */
function inHandsOrder(acts: readonly ReadAct[]): ReadAct[] {
  const isCastOff = ({ act }: ReadAct): boolean => act === 'cast-off';
  return [...acts.filter(isCastOff), ...acts.filter((act) => !isCastOff(act))];
}

function headingOf(row: Row): string {
  const [counter, before, carriage] = [row[1], row[2], row[3]].map(joined);
  const when = before === 'end' ? `after row ${counter}` : `before row ${before}`;
  return `${when} · counter reads ${counter} · carriage at the ${carriage}`;
}

/** `increase L49`, `cast off L60–L56`. */
function shapingRead(text: string, edge: 'left' | 'right'): ReadAct[] {
  if (text === '') return [];
  const [, what, needles = ''] = /^(increase|decrease|cast off|cast on) (.+)$/.exec(text) ?? [];
  if (what === undefined) throw new Error(`No shaping: ${text}`);
  if (what === 'increase' || what === 'decrease') return [{ act: what, edge, needles: labels(needles) }];
  const [first = '', last = first] = needles.split('–');
  return [{ act: what === 'cast off' ? 'cast-off' : 'cast-on-more', edge, needles: [first, last] }];
}
