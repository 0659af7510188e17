/** What holds of the anchors in copies of any motif, looked at on the fabric that they make. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { anchorsInCopy, type CopyQuestion } from '@shared/anchors/index.ts';
import { modulo } from '@shared/grid/index.ts';
import { readBitmap } from '../reference/bitmap.ts';
import { drawing } from './drawings.ts';

/** Copies of a drawing, three by three where they repeat, and the anchors on them. */
interface Field {
  readonly width: number;
  readonly height: number;
  readonly yarn: (column: number, row: number) => number | null;
  readonly anchor: (column: number, row: number) => number | null;
}

function fieldOf(question: CopyQuestion): Field {
  const { copy, isBesideItself, isAboveItself, step } = question;
  const anchors = new Map<number, number>();
  anchorsInCopy(question).forEach((floats, row) => {
    for (const { yarn, first, anchors: taken } of floats) {
      for (const at of taken) anchors.set(row * copy.width + ((first + at) % copy.width), yarn);
    }
  });
  const [across, up] = [isBesideItself ? 3 : 1, isAboveItself ? 3 : 1];
  const cellOf = (column: number, row: number): number | null => {
    if (row < 0 || row >= up * copy.height) return null;
    const inTier = column - step * Math.floor(row / copy.height);
    if (!isBesideItself && (inTier < 0 || inTier >= copy.width)) return null;
    return (row % copy.height) * copy.width + modulo(inTier, copy.width);
  };
  return {
    width: across * copy.width,
    height: up * copy.height,
    yarn: (column, row) => {
      const cell = cellOf(column, row);
      return cell === null ? null : (copy.cells[cell] as number);
    },
    anchor: (column, row) => {
      const cell = cellOf(column, row);
      return cell === null ? null : (anchors.get(cell) ?? null);
    },
  };
}

const cells = fc.array(fc.nat(400), { maxLength: 6 });

/** Thin drawings, so that floats are long; two contrasts now and then. */
const question = fc
  .record({
    drawing: drawing({ mostWidth: 26, mostHeight: 7, colours: 3 }),
    thin: fc.infiniteStream(fc.nat(9)),
    longest: fc.integer({ min: 1, max: 9 }),
    isBehindFigure: fc.boolean(),
    isBesideItself: fc.boolean(),
    isAboveItself: fc.boolean(),
    step: fc.integer({ min: -9, max: 9 }),
    never: cells,
    always: cells,
    keeps: fc.integer({ min: 0, max: 9 }),
  })
  .map(({ drawing: drawn, thin, keeps, never, always, ...asked }): CopyQuestion => ({
    ...asked,
    step: asked.isBesideItself ? asked.step : 0,
    main: 0,
    copy: { ...drawn, cells: drawn.cells.map((cell) => ((thin.next().value as number) < keeps ? 0 : cell)) },
    never: new Set(never),
    always: new Set(always),
  }));

/** What the laws say, over all cells of the field: each anchor that breaks one. */
function broken(asked: CopyQuestion): string[] {
  const { main } = asked;
  const field = fieldOf(asked);
  const isFigure = (column: number, row: number): boolean => (field.yarn(column, row) ?? main) !== main;
  const isAround = (wanted: boolean, column: number, row: number, far: number): boolean => {
    for (let r = row - far; r <= row + far; r++) {
      for (let c = column - far; c <= column + far; c++) if (isFigure(c, r) === wanted) return true;
    }
    return false;
  };
  const faults: string[] = [];
  for (let row = 0; row < field.height; row++) {
    for (let column = 0; column < field.width; column++) {
      const anchor = field.anchor(column, row);
      if (anchor === null) continue;
      if (field.anchor(column, row + 1) !== null) faults.push(`${column}, ${row} is stacked`);
      // The lowest and the highest copy have others below and above them, which the field has not.
      if (asked.isAboveItself && (row < 2 || row >= field.height - 2)) continue;
      const isOnOutline = anchor === main ? isAround(false, column, row, 2) : isAround(true, column, row, 1);
      if (isOnOutline) faults.push(`${column}, ${row} is on an outline or next to it`);
    }
  }
  return faults;
}

describe('anchors in copies', () => {
  it('are never stacked, nor on the outline of the figure or next to it', () => {
    fc.assert(
      fc.property(question, (asked) => {
        expect(broken(asked)).toEqual([]);
      }),
      { numRuns: 1500 },
    );
  });

  it('leave no float over the limit but where no cell of it may take one', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const { width } = asked.copy;
        anchorsInCopy(asked).forEach((floats, row) => {
          for (const { length, anchors, loose, first } of floats) {
            expect(length).toBeGreaterThan(asked.longest);
            const stops = [-1, ...anchors, length];
            const long = stops.slice(1).flatMap((stop, at) => {
              const from = (stops[at] as number) + 1;
              return stop - from > asked.longest ? [{ first: from, last: stop - 1 }] : [];
            });
            expect(loose).toEqual(long);
            for (const at of anchors) expect(asked.never.has(row * width + ((first + at) % width))).toBe(false);
          }
        });
      }),
      { numRuns: 1000 },
    );
  });

  it('are never more with a looser limit that leaves nothing loose', () => {
    let [compared, yielded] = [0, 0];
    fc.assert(
      fc.property(question, (asked) => {
        // One that a person wants is counted in `least`, and is left out where at that limit the row below took its place: of
        // those the law says nothing.
        const free = { ...asked, always: new Set<number>() };
        const by = Array.from({ length: 12 }, (_, at) => anchorsInCopy({ ...free, longest: at + 1 }).flat());
        const sum = (floats: (typeof by)[number], of: (float: (typeof floats)[number]) => number): number =>
          floats.reduce((all, float) => all + of(float), 0);
        const counts = by.map((floats) => sum(floats, ({ anchors }) => anchors.length));
        const least = by.map((floats) => sum(floats, (float) => float.least));
        by.forEach((floats, at) => {
          if (floats.some(({ loose }) => loose.length > 0)) return;
          for (let looser = at; looser < by.length; looser++) {
            compared++;
            expect(least[looser]).toBeLessThanOrEqual(least[at] as number);
            // Where the rows below took what a row needs, one with a looser limit may take one more: the stack as a whole is
            // not searched.
            if ((counts[looser] as number) > (counts[at] as number)) {
              yielded++;
              expect(counts[looser]).toBeGreaterThan(least[looser] as number);
            }
          }
        });
      }),
      { numRuns: 1000 },
    );
    expect(yielded).toBeLessThan(compared / 200);
  });

  it('stand where a person wants them, as far as they break a float there', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const plain = { ...asked, always: new Set<number>(), never: new Set<number>() };
        const { width } = asked.copy;
        const placed = (of: CopyQuestion): number[] =>
          anchorsInCopy(of).flatMap((floats, row) =>
            floats.flatMap(({ first, anchors }) => anchors.map((at) => row * width + ((first + at) % width))),
          );
        const [moved] = placed(plain);
        if (moved === undefined) return;
        expect(placed({ ...plain, never: new Set([moved]) })).not.toContain(moved);
        expect(placed({ ...plain, always: new Set([moved]) })).toContain(moved);
      }),
      { numRuns: 800 },
    );
  });

  it.each(['scales', 'letters', 'mailfull', 'escherknot', 'dimple1', 'root_weave'])(
    'keep to all of it on the bitmap %s, alone and all over',
    (name) => {
      const copy = readBitmap(name);
      for (const isAllOver of [false, true]) {
        for (const longest of [1, 3, 5]) {
          const faults = broken({
            copy,
            main: 0,
            longest,
            isBehindFigure: longest === 3,
            isBesideItself: isAllOver,
            isAboveItself: isAllOver,
            step: 0,
            never: new Set(),
            always: new Set(),
          });
          expect(faults).toEqual([]);
        }
      }
    },
  );
});
