/** The JSON of `sizes`. Needles are labels. */
import { label } from '@shared/bed/index.ts';
import type { BandInSize, SizeColumn } from '@shared/fabric/index.ts';
import type { Shape } from '@shared/piece/index.ts';
import type { Spaces } from '@shared/placement/index.ts';
import { problemJson, type ProblemJson } from './problem.ts';

export interface SizesJson {
  /** Smallest first. */
  readonly sizes: readonly ({
    readonly name: string;
    readonly shape: Shape;
    readonly hemRows: number;
    /** Copies across of each group of each band. */
    readonly copies: readonly (readonly number[])[];
  } & ({ readonly bands: readonly BandJson[]; readonly beyondBed: boolean } | ProblemJson))[];
}

interface BandJson {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly setUpAt: number | null;
  readonly firstNeedles: readonly string[];
  /** As judged: to the figure, or to the pattern blocks. */
  readonly spaces: Spaces;
  readonly acrossSeam: number;
  readonly imbalance: number;
  readonly fromRule: number;
  /** Copies that fit side by side. */
  readonly holds: number;
}

export function sizesJson(table: readonly SizeColumn[]): SizesJson {
  return {
    sizes: table.map(({ name, shape, hemRows, groups, placed }) => ({
      name,
      shape,
      hemRows,
      copies: groups.map((band) => band.map(({ across }) => across)),
      ...(placed.ok
        ? { bands: placed.value.bands.map(bandJson), beyondBed: placed.value.beyondBed !== null }
        : problemJson(placed.problem)),
    })),
  };
}

function bandJson({ firstNeedles, ...band }: BandInSize): BandJson {
  return { ...band, firstNeedles: firstNeedles.map(label) };
}
