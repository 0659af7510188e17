/** Cells of two signs told from those of one that lies now here and now there. */
import { describe, expect, it } from 'vitest';
import { areParted } from '../../../src-shared/reading/symbol-looks.ts';
import { SYMBOL_NUMBERS } from '../../../src-shared/reading/symbols.ts';
import { Chances } from '../../generate/charts/random.ts';

interface Cells {
  /** Of the one sign and of the other, so many. */
  readonly many?: readonly [number, number];
  /** By how much they differ in four places. */
  readonly apart: number;
  /** How much each place differs from cell to cell. */
  readonly grain?: number;
  /** How far signs of one kind lie to one side or the other, as it shows in places that both have. */
  readonly moved?: number;
}

function areTwo({ many: [these, those] = [60, 60], apart, grain = 0.02, moved = 0 }: Cells): boolean {
  const chances = new Chances(11);
  const even = Float64Array.from({ length: (these + those) * SYMBOL_NUMBERS }, () => 0.4 + grain * chances.normal());
  for (let cell = 0; cell < these + those; cell++) {
    const aside = moved * chances.between(-1, 1);
    for (let place = 0; place < 16; place++) {
      const at = cell * SYMBOL_NUMBERS + place;
      const own = place < 4 && cell < these ? apart : 0;
      even[at] = (even[at] as number) + own + (place % 2 === 0 ? aside : -aside);
    }
  }
  const first = Array.from({ length: these }, (_, i) => i);
  return areParted(
    even,
    first,
    Array.from({ length: those }, (_, i) => these + i),
  );
}

describe('cells of two looks', () => {
  it('are of two signs where nothing lies between them', () => {
    expect(areTwo({ apart: 0.3 })).toBe(true);
  });

  it('are of one where they run into one another', () => {
    expect(areTwo({ apart: 0 })).toBe(false);
    expect(areTwo({ apart: 0.04 })).toBe(false);
    // Five deviations apart: parted by eye, but not surely.
    expect(areTwo({ apart: 0.05 })).toBe(false);
  });

  it('are of two though each lies now here and now there by more than they differ', () => {
    expect(areTwo({ apart: 0.2, moved: 0.3 })).toBe(true);
  });

  it('are of one where one of them is a few cells alone, which part by chance', () => {
    expect(areTwo({ apart: 0.3, many: [39, 200] })).toBe(false);
    expect(areTwo({ apart: 0.3, many: [200, 39] })).toBe(false);
    expect(areTwo({ apart: 0.3, many: [40, 200] })).toBe(true);
  });
});
