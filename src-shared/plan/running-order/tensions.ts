/** Tension belongs to rows: what holds for each, told where it changes. */
import type { Plan } from '../types.ts';
import type { KnittedRow } from './knitted-rows.ts';
import type { TensionPart } from './types.ts';
import type { Work } from './work.ts';

interface RowTension {
  readonly part: TensionPart;
  readonly text: string;
}

/**
 * What is the same before and after is not told. Rows of a hem, the row that
 * joins it and the last row before casting off are tighter or looser by
 * nature, so their part is told even where nobody wrote a number.
 *
 * The first is told at the cast-on, since the piece knitted before may have
 * left the machine at another; only a piece that is knitted from end to end as
 * its swatch, with no number written, is told none.
 */
export function setTensions(work: Work): void {
  const sectionOf = tensionsOfSections(work);
  const tensions = work.rows.map((row) => ({ row: row.row, now: tensionOf(work, row, sectionOf) }));
  if (tensions.every(({ now }) => now.part === 'main' && now.text === '')) return;
  let before: RowTension | null = null;
  for (const { row, now } of tensions) {
    if (before === null || !isSame(before, now)) work.do(row - 1, { kind: 'tension', ...now });
    before = now;
  }
}

function tensionOf(work: Work, { row }: KnittedRow, sectionOf: (row: number) => RowTension): RowTension {
  const { piece, join, last } = work;
  const { tension } = piece;
  if (row === last && piece.ends === 'cast-off') return { part: 'lastRow', text: tension.lastRow };
  if (join && row === join.at + 1) return { part: 'joiningRow', text: tension.joiningRow };
  const own = sectionOf(row);
  if (own.part === 'turningRow') return own;
  const isInPattern = work.programs.some(({ firstRow, lastRow }) => firstRow <= row && row <= lastRow);
  return isInPattern && tension.pattern !== '' ? { part: 'pattern', text: tension.pattern } : own;
}

/** The tension of plain rows, by the section they are in. */
function tensionsOfSections({ piece, plan }: Work): (row: number) => RowTension {
  const { tension, hem, sections } = piece;
  const isTurning = hem.turning === 'loose' || (hem.turning === 'eyelets' && tension.turningRow !== '');
  const main: RowTension = { part: 'main', text: tension.main };
  const facing: RowTension = { part: 'facing', text: tension.facing };
  const outside: RowTension = { part: 'outside', text: tension.outside };
  const turning: RowTension = { part: 'turningRow', text: tension.turningRow };
  const spans = plan.sections.map(({ name, first, last }) => {
    if (name === 'hem-back') return { first, last, own: facing };
    if (name === 'hem-front') return { first, last, own: isFolded(plan) ? outside : main };
    if (name === 'body') return { first, last, own: main };
    const text = sections.find((part) => part.name === name.named)?.tension ?? '';
    return { first, last, own: text === '' ? main : { part: { section: name.named }, text } };
  });
  const fold = spans.find(({ own }) => own === facing);
  return (row) => {
    if (isTurning && row === fold?.last) return turning;
    return spans.find(({ first, last }) => first <= row && row <= last)?.own ?? main;
  };
}

function isFolded({ sections }: Plan): boolean {
  return sections.some(({ name }) => name === 'hem-back');
}

function isSame(one: RowTension, other: RowTension): boolean {
  if (one === other) return true;
  const name = ({ part }: RowTension): string => (typeof part === 'string' ? part : `section ${part.section}`);
  return one.text === other.text && name(one) === name(other);
}
