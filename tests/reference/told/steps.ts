/** Steps as a knitter reads them: readings with what is done there, and rows to knit. They become a running order. */
import type { ActJson as KnownAct, OrderJson, StopJson, StretchJson } from '../knitter/index.ts';
import { actRead, type ReadAct } from './sentences.ts';

/** `before row 24 · counter reads 23 · carriage at the left (COL)`, with its sentences. */
export function stopRead(heading: string, sentences: readonly string[]): StopJson {
  const match =
    /^(?:before row (\d+)|after row \d+) · counter reads (\d+) · carriage at the (?:(left) \(COL\)|right \(COR\))$/i.exec(
      heading,
    );
  if (!match) throw new Error(`Not a stop: ${heading}`);
  const [, row, counter, left] = match;
  return {
    kind: 'stop',
    id: `at-${counter}`,
    counter: Number(counter),
    row: row === undefined ? null : Number(row),
    carriageAt: left === undefined ? 'right' : 'left',
    acts: sentences.map((sentence) => actRead(sentence) as KnownAct),
  };
}

/** `Knit rows 24–59, until the counter reads 59.` */
export function knitRead(sentence: string): readonly [first: number, last: number] {
  const match = /^Knit (?:row (\d+)|rows (\d+)–(\d+), until the counter reads (\d+))\.$/.exec(sentence);
  if (!match) throw new Error(`Nothing to knit: ${sentence}`);
  const [, only, first, last, reads] = match;
  if (last !== reads) throw new Error(`The counter reads ${reads} after row ${last}`);
  return only === undefined ? [Number(first), Number(last)] : [Number(only), Number(only)];
}

/** A stop's own row is the first that is knitted after it; what goes on is a stretch. */
export function orderRead(
  told: readonly { readonly stop: StopJson; readonly knit: readonly [number, number] | null }[],
): OrderJson {
  return told.flatMap(({ stop, knit }): OrderJson => {
    if (stop.row === null) return [stop];
    if (knit?.[0] !== stop.row) throw new Error(`Row ${stop.row} is not knitted after its stop`);
    const [first, last] = [knit[0] + 1, knit[1]];
    const side = stop.carriageAt === 'left' ? 'right' : 'left';
    const rest: StretchJson[] = last < first ? [] : [{ kind: 'stretch', first, last, carriageAt: side }];
    return [stop, ...rest];
  });
}

export type ReadStep = { readonly stop: StopJson; readonly knit: readonly [number, number] | null };

/** A stop under its heading: sentences, and at last what is knitted. */
export function stepRead(heading: string, lines: readonly string[]): ReadStep {
  const last = lines.at(-1) ?? '';
  const isKnit = /^Knit rows? \d/.test(last);
  const stop = stopRead(heading, isKnit ? lines.slice(0, -1) : lines);
  return { stop, knit: isKnit ? knitRead(last) : null };
}

/**
 * `Rows 33–56: knit them as rows 21–32, beginning when the counter reads 32 and
 * 44.` The steps told before, done again at each reading.
 */
export function againRead(sentence: string, told: readonly ReadStep[]): ReadStep[] {
  const match = /^Rows (\d+)–(\d+): knit them as rows? (\d+)(?:–(\d+))?, beginning when the counter reads (.+)\.$/.exec(
    sentence,
  );
  if (!match) throw new Error(`Nothing to do again: ${sentence}`);
  const [from, to, first] = match.slice(1, 4).map(Number) as [number, number, number];
  const once = told.filter(({ stop: { counter }, knit }) => knit !== null && counter + 1 >= first && knit[1] < from);
  const again = (match[5] ?? '').split(/, | and /).flatMap((reading) => {
    const by = Number(reading) + 1 - first;
    return once.map(({ stop, knit }): ReadStep => {
      const acts = stop.acts.map((act) => (act.act === 'first-needles' ? { ...act, row: act.row + by } : act));
      const counter = stop.counter + by;
      const [start, end] = knit as readonly [number, number];
      return {
        stop: { ...stop, id: `at-${counter}`, counter, row: (stop.row ?? 0) + by, acts },
        knit: [start + by, end + by],
      };
    });
  });
  if (again.at(-1)?.knit?.[1] !== to) throw new Error(`Row ${to} is not the last: ${sentence}`);
  return again;
}

/** A printed running order without its folds: headings and sentences under them, apart by blank lines. */
export function followRead(text: string): OrderJson {
  const told: ReadStep[] = [];
  for (const block of text.split(/\n\n/)) {
    const [heading = '', ...lines] = block.split('\n').map((line) => line.trim());
    if (/counter reads \d+ · carriage/.test(heading)) told.push(stepRead(heading, lines));
    else if (/^Rows \d+–\d+: knit them as/.test(heading)) told.push(...againRead(heading, told));
  }
  return orderRead(told);
}

/** An order as it is told in sentences: what holds while rows are knitted follows from the acts, lengths are whole centimetres. */
export function asTold(order: readonly Readonly<Record<string, unknown>>[]): unknown[] {
  return order.map(({ kind, counter, row, carriageAt, acts, first, last }) => {
    if (kind === 'stretch') return { kind, first, last, carriageAt };
    const told = (acts as readonly ReadAct[]).map((act) =>
      typeof act.mm === 'number' ? { ...act, mm: Math.ceil(act.mm / 10) * 10 } : act,
    );
    return { kind, counter, row, carriageAt, acts: told };
  });
}
