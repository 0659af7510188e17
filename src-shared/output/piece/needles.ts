/** The ruler under the piece, and the labels of the needles that matter on it. */
import { label, type Slot } from '../../bed/index.ts';
import { edgesAt } from '../../piece/index.ts';
import type { Plan } from '../../plan/index.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { lineItem, pathItem, rectangleItem, textItem } from '../items.ts';
import type { Point, SheetItem, Stroke } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { HAIRLINE_MM, LABEL_PT, LINE_MM } from '../style.ts';
import { extent, stagger, type HungLabel, type LabelAnchor, type WantedLabel } from './stagger.ts';
import { rowsMeasured } from './row-marks.ts';
import type { PartOnPaper, PieceView } from './view.ts';

type Kind = 'first' | 'last' | 'edge-left' | 'edge-right' | 'seen-first' | 'seen-last';

interface NeedleLabel extends WantedLabel {
  readonly kind: Kind;
  readonly slot: Slot;
  /** The row on which it is found, at whose lower edge its line begins. */
  readonly row: number;
}

/** Which side of its line a label likes: towards the group it belongs to; the piece's edges outwards. */
const ANCHORS: Readonly<Record<Kind, readonly LabelAnchor[]>> = {
  first: ['start', 'middle', 'end'],
  last: ['end', 'middle', 'start'],
  'edge-left': ['end', 'middle'],
  'edge-right': ['start', 'middle'],
  'seen-first': ['start', 'middle', 'end'],
  'seen-last': ['end', 'middle', 'start'],
};

/** First needles get the best places, then edges, then last needles, then what is seen of a block that is not all seen. */
const RANKS: Readonly<Record<Kind, number>> = {
  first: 0,
  'edge-left': 1,
  'edge-right': 1,
  last: 2,
  'seen-first': 3,
  'seen-last': 3,
};

const TICK_MM = 1.2;
const LONG_TICK_MM = 2.2;
const RULER_MM = 3.2;
const LEVEL_MM = 3.7;
const MOST_LEVELS = 8;
const CASING_MM = 0.35;

export interface NeedleRuler {
  readonly heightMm: number;
  readonly items: readonly SheetItem[];
  /** Needles for which there was no room; the table of groups has them all. */
  readonly left: number;
}

/**
 * Ticks for the needles of the cast-on edge and of the rows that groups stand
 * on (longer every ten), and below them the first needle of each group (strong),
 * the last (lighter), the first and last that are seen of it, and the edges of
 * the cast-on and of those rows, each at the end of a fine line up to its row.
 * Needles stand on it as on row 1; a line up to a row of another gauge slants.
 */
export function needleRuler(plan: Plan, view: PieceView, top: number): NeedleRuler {
  const { hung, left } = stagger(wantedLabels(plan, view), MOST_LEVELS);
  const levels = Math.max(-1, ...hung.map(({ level }) => level)) + 1;
  return {
    heightMm: RULER_MM + levels * LEVEL_MM,
    items: [
      ...hung.flatMap((one) => leader(one, view, top)),
      ...ticks(plan, view, top),
      ...hung.map((one) => text(one, top)),
    ],
    left: left.length,
  };
}

function wantedLabels(plan: Plan, view: PieceView): NeedleLabel[] {
  const ruled = view.at(1);
  const wanted = new Map<number, NeedleLabel>();
  const want = (kind: Kind, slot: Slot, row: number): void => {
    const known = wanted.get(slot);
    // A needle is named once, from the lowest group that needs it; a first needle outranks a last.
    if (known && (known.kind === 'first' || kind !== 'first')) return;
    const name = label(slot);
    wanted.set(slot, {
      kind,
      text: name,
      x: ruled.x(slot) + ruled.cellWidth / 2,
      widthMm: widthMm(name, LABEL_PT, kind === 'first'),
      rank: RANKS[kind],
      anchors: ANCHORS[kind],
      slot,
      row: Math.min(row, known?.row ?? Infinity),
    });
  };
  const lowestFirst = [...plan.groups].sort((a, b) => a.firstRow - b.firstRow);
  for (const { block, firstRow } of lowestFirst) {
    want('first', block.first, firstRow);
    want('last', block.last, firstRow);
  }
  for (const row of [1, ...rowsMeasured(plan)]) {
    const edges = edgesAt(plan.outline, row);
    want('edge-left', edges.first, row);
    want('edge-right', edges.last, row);
  }
  for (const { figure, firstRow } of lowestFirst) {
    want('seen-first', figure.first, firstRow);
    want('seen-last', figure.last, firstRow);
  }
  return [...wanted.values()];
}

function ticks(plan: Plan, view: PieceView, top: number): SheetItem[] {
  const edges = [1, ...rowsMeasured(plan)].map((row) => edgesAt(plan.outline, row));
  const first = Math.min(...edges.map((run) => run.first));
  const last = Math.max(...edges.map((run) => run.last));
  // One tick a needle while they can be told apart; every tenth is numbered outwards from the centre.
  const ruled = view.at(1);
  const step = ruled.cellWidth >= 0.8 ? 1 : ruled.cellWidth >= 0.16 ? 5 : 10;
  const short: Point[][] = [];
  const long: Point[][] = [];
  for (let slot: number = first; slot <= last; slot++) {
    const number = slot < 0 ? -slot : slot + 1;
    const x = ruled.x(slot) + ruled.cellWidth / 2;
    if (number % 10 === 0)
      long.push([
        [x, top],
        [x, top + LONG_TICK_MM],
      ]);
    else if (number % step === 0)
      short.push([
        [x, top],
        [x, top + TICK_MM],
      ]);
  }
  const stroke = { paint: 'rule', width: HAIRLINE_MM } as const;
  const rule = lineItem([ruled.x(first), top], [ruled.x(last + 1), top], { paint: 'rule', width: LINE_MM });
  return [rule, pathItem([...short, ...long], stroke), ...centreMark(ruled, first, last, top)];
}

/** A dot where the left half of the bed meets the right one. */
function centreMark(ruled: PartOnPaper, first: number, last: number, top: number): SheetItem[] {
  if (first >= 0 || last < 0) return [];
  return [rectangleItem(ruled.x(0) - 0.45, top - 0.45, 0.9, 0.9, 'accent')];
}

/** The line from a needle's row down to its label, on paper of its own so that it is seen on yarn of any colour. */
function leader({ label: wanted, level }: HungLabel<NeedleLabel>, view: PieceView, top: number): SheetItem[] {
  const isGroup = wanted.kind === 'first' || wanted.kind === 'last';
  const width = isGroup ? LINE_MM : HAIRLINE_MM;
  const line = (stroke: Stroke, to: number): SheetItem => pathItem([view.wayDown(wanted.slot, wanted.row, to)], stroke);
  return [
    line({ paint: 'paper', width: width + CASING_MM }, top),
    line({ paint: wanted.kind === 'first' ? 'accent' : 'rule', width }, top + RULER_MM + level * LEVEL_MM),
  ];
}

function text(hung: HungLabel<NeedleLabel>, top: number): SheetItem {
  const { label: wanted, level } = hung;
  const [left] = extent(hung);
  const baseline = top + RULER_MM + level * LEVEL_MM + LABEL_PT * POINT_MM * CAPITAL_EM + 0.6;
  const isFirst = wanted.kind === 'first';
  return textItem(wanted.text, left, baseline, {
    sizePt: LABEL_PT,
    tone: isFirst ? 'ink' : 'soft',
    isStrong: isFirst,
  });
}
