/** Small fabrics drawn as text, to work strands out by hand on. */
import type { Side, Slot } from '@shared/bed/index.ts';
import { label } from '@shared/bed/index.ts';
import type { Fabric } from '@shared/fabric/index.ts';
import { evenGauge, type Gauge, type Gauges, type Outline } from '@shared/piece/index.ts';
import {
  layStrands,
  type Carry,
  type Float,
  type LaidStrands,
  type Laying,
  type OwnBall,
  type Wrap,
} from '@shared/strands/index.ts';

/** `.` is main, `X` yarn 1, `O` yarn 2, a blank lies beside the piece. */
const YARNS = '.XO';

export interface Drawn {
  readonly fabric: Fabric;
  readonly laying: Laying;
  readonly laid: LaidStrands;
}

interface Settings {
  readonly startSide?: Side;
  readonly ownBalls?: readonly OwnBall[];
  readonly gauge?: Gauge;
  /** Instead of one gauge. */
  readonly gauges?: Gauges;
  readonly floatLimit?: { readonly stitches: number; readonly mm: number | null };
}

/**
 * A fabric from lines of text, the topmost row first, centred on the bed: ten
 * columns are L5 L4 L3 L2 L1 R1 R2 R3 R4 R5. Stitches are 5 mm wide and rows
 * 5 mm tall unless a gauge is given, and the carriage starts from the right.
 */
export function drawnFabric(lines: readonly string[], settings: Settings = {}): Drawn {
  const width = lines[0]?.length ?? 0;
  const rows = lines.length;
  const first = -Math.floor(width / 2);
  const fromBottom = [...lines].reverse();
  const cells = Uint8Array.from(fromBottom.join(''), (cell) => (cell === ' ' ? 255 : YARNS.indexOf(cell)));
  const outline: Outline = {
    rows,
    first: Int32Array.from(fromBottom, (line) => first + line.search(/\S/)),
    last: Int32Array.from(fromBottom, (line) => first + line.trimEnd().length - 1),
  };
  const fabric = { first, width, rows, cells };
  const laying: Laying = {
    main: 0,
    outline,
    ownBalls: [],
    startSide: 'right',
    gauges: evenGauge(settings.gauge ?? { stitches: 20, rows: 20 }),
    floatLimit: { stitches: 5, mm: null },
    ...settings,
  };
  return { fabric, laying, laid: layStrands(fabric, laying) };
}

export function run(first: Slot, last: Slot): string {
  return first === last ? label(first) : `${label(first)}-${label(last)}`;
}

/** `main L3-L2`, `contrast L1-R1 over`; with `yarn:group` after the role where it matters. */
export function sayFloat({ strand, first, last, isOver }: Float): string {
  return `${strandName(strand)} ${run(first, last)}${isOver ? ' over' : ''}`;
}

/** `contrast 1 to row 2: L3-L2, 1 st, 1 up`. */
export function sayCarry({ strand, toRow, first, last, stitches, rows, isOver }: Carry): string {
  return `${strandName(strand)} to row ${toRow}: ${run(first, last)}, ${stitches} st, ${rows} up${isOver ? ', over' : ''}`;
}

export function sayWrap({ needle, edge, strand }: Wrap): string {
  return `${strandName(strand)} ${edge} ${label(needle)}`;
}

function strandName({ role, yarn, group }: Float['strand']): string {
  return role === 'main' ? 'main' : `contrast ${yarn}${group === null ? '' : ` of group ${group}`}`;
}
