/** The JSON of `measure`. */
import type { Blank, Measure, Slip, Step } from '@shared/repeat/index.ts';
import type { Yarn } from '@shared/project/index.ts';

export interface MeasureJson {
  readonly width: number;
  readonly height: number;
  /** `#rrggbb` */
  readonly ground: string;
  /** Null where there is no figure. */
  readonly blank: Blank | null;
  readonly repeat: {
    readonly width: number;
    readonly height: number;
    readonly dividesAcross: boolean;
    readonly dividesUp: boolean;
  };
  readonly step: Step | null;
  readonly slips: readonly Slip[];
}

export function measureJson(measure: Measure, yarns: readonly Yarn[]): MeasureJson {
  const { width, height, blank, repeat, step, slips } = measure;
  return {
    width,
    height,
    ground: (yarns[measure.ground] as Yarn).colour,
    blank: blank && { left: blank.left, right: blank.right, top: blank.top, bottom: blank.bottom },
    repeat: {
      width: repeat.width,
      height: repeat.height,
      dividesAcross: repeat.dividesAcross,
      dividesUp: repeat.dividesUp,
    },
    step,
    slips,
  };
}
