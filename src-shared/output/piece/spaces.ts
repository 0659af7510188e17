/** Margins and gaps drawn to scale under the piece, as on the row where they hold: what the eye sees, and the pattern blocks. */
import type { Run } from '../../bed/index.ts';
import type { PlacedBand } from '../../fabric/index.ts';
import { edgesAt } from '../../piece/index.ts';
import type { Spaces } from '../../placement/index.ts';
import { bandsOf } from '../../pattern/index.ts';
import type { Plan } from '../../plan/index.ts';
import { sheetWords } from '../../words/sheet.ts';
import { CAPITAL_EM, widthMm } from '../font/metrics.ts';
import { pathItem, rectangleItem, textItem } from '../items.ts';
import type { Point, SheetItem } from '../model.ts';
import { POINT_MM } from '../paper.ts';
import { HAIRLINE_MM, LABEL_PT, LINE_MM } from '../style.ts';
import type { PartOnPaper, PieceView } from './view.ts';

/** More bands than this are left to the table of groups. */
const MOST_BANDS = 2;
const STRIP_MM = 4.6;
const BAR_MM = 3.2;

interface Strip {
  readonly title: string;
  /** The row where it holds. */
  readonly row: number;
  readonly edges: Run;
  readonly groups: readonly Run[];
  readonly spaces: Spaces;
  /** Stitches of each margin that the seam takes. */
  readonly seamAllowance: { readonly left: number; readonly right: number };
}

export interface SpaceStrips {
  readonly heightMm: number;
  readonly items: readonly SheetItem[];
}

/** One strip a band and measure; the two measures are one where no block has blank columns at its edges. */
export function spaceStrips(plan: Plan, view: PieceView, left: number, top: number): SpaceStrips {
  const bands = bandsOf(plan);
  if (bands.length > MOST_BANDS) return { heightMm: 0, items: [] };
  const strips = bands.flatMap((band) => stripsOf(plan, band));
  return {
    heightMm: strips.length * STRIP_MM,
    items: strips.flatMap((strip, index) => drawStrip(strip, view.at(strip.row), left, top + index * STRIP_MM)),
  };
}

function stripsOf(plan: Plan, band: PlacedBand): Strip[] {
  const choice = band.choices[band.taken];
  if (!choice) return [];
  const row = band.firstRow;
  const edges = edgesAt(plan.outline, row);
  const { seamAllowance } = band.question;
  const figure = {
    row,
    edges,
    seamAllowance,
    groups: choice.groups.map((group) => group.figure),
    spaces: choice.figure,
  };
  const blocks = {
    row,
    edges,
    seamAllowance,
    groups: choice.groups.map((group) => group.block),
    spaces: choice.blocks,
  };
  const { strip } = sheetWords;
  if (choice.groups.every(({ block, figure: seen }) => block.first === seen.first && block.last === seen.last)) {
    return [{ title: strip.both(row), ...figure }];
  }
  return [
    { title: strip.figure(row), ...figure },
    { title: strip.blocks(row), ...blocks },
  ];
}

function drawStrip(strip: Strip, part: PartOnPaper, left: number, top: number): SheetItem[] {
  const middle = top + STRIP_MM / 2;
  const baseline = middle + (LABEL_PT * POINT_MM * CAPITAL_EM) / 2;
  const bars = strip.groups.map(({ first, last }) => [part.x(first), part.x(last + 1)] as const);
  const bounds = [part.x(strip.edges.first), ...bars.flat(), part.x(strip.edges.last + 1)];
  const counts = [strip.spaces.margins[0], ...strip.spaces.gaps, strip.spaces.margins[1]];
  const { left: takenLeft, right: takenRight } = strip.seamAllowance;
  const spaces = counts.map((count, index) => {
    const from = bounds[index * 2] as number;
    const to = bounds[index * 2 + 1] as number;
    const taken = index === 0 ? takenLeft : index === counts.length - 1 ? takenRight : 0;
    const texts = [...(taken > 0 && taken <= count ? [sheetWords.strip.margin(count, count - taken)] : []), `${count}`];
    return { texts, from, to };
  });
  const items: SheetItem[] = [
    textItem(strip.title, left, baseline, { sizePt: LABEL_PT, tone: 'soft' }),
    ...bars.map(([from, to]) => rectangleItem(from, middle - BAR_MM / 2, to - from, BAR_MM, 'hairline')),
  ];
  strip.groups.forEach(({ first, last }, index) => {
    const [from, to] = bars[index] as readonly [number, number];
    const text = String(last - first + 1);
    if (widthMm(text, LABEL_PT) + 1.2 <= to - from) {
      items.push(textItem(text, (from + to) / 2, baseline, { sizePt: LABEL_PT, tone: 'soft', anchor: 'middle' }));
    }
  });
  for (const { texts, from, to } of spaces) if (to > from) items.push(...drawSpace(texts, from, to, middle, baseline));
  return items;
}

/** A line from bar to bar, broken by the first of the texts that there is room for. */
function drawSpace(texts: readonly string[], from: number, to: number, middle: number, baseline: number): SheetItem[] {
  const text = texts.find((said) => widthMm(said, LABEL_PT, true) + 1.2 <= to - from) ?? '';
  const width = widthMm(text, LABEL_PT, true);
  const centre = (from + to) / 2;
  const lines: Point[][] = [
    [
      [from, middle - 0.9],
      [from, middle + 0.9],
    ],
    [
      [to, middle - 0.9],
      [to, middle + 0.9],
    ],
  ];
  const free = (to - from - width) / 2 - 0.8;
  if (free > 0.6) {
    lines.push(
      [
        [from, middle],
        [from + free, middle],
      ],
      [
        [to - free, middle],
        [to, middle],
      ],
    );
  }
  const drawn: SheetItem[] = [pathItem(lines, { paint: 'rule', width: free > 0.6 ? LINE_MM : HAIRLINE_MM })];
  if (text !== '') drawn.push(textItem(text, centre, baseline, { sizePt: LABEL_PT, anchor: 'middle', isStrong: true }));
  return drawn;
}
