/** Which kinds of project a piece is that the simulated knitter has knitted: each has to come often enough. */
import { bandsOf, allOversOf } from '@shared/pattern/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { sizesOf, type ProjectAt } from '@shared/project/index.ts';
import { gaugeOfRow } from '../property/needle-by-needle.ts';
import { yarnsOf, type Knitted, type OrderJson } from '../reference/knitter/index.ts';
import type { Strand } from './strands.ts';

export interface KnittedPiece {
  readonly project: ProjectAt;
  readonly plan: Plan;
  readonly order: OrderJson;
  readonly knitted: Knitted;
  readonly strands: readonly Strand[];
}

type Is = (piece: KnittedPiece) => boolean;

const KINDS = {
  // The piece.
  'widened stitch by stitch': hasAct('increase'),
  'narrowed stitch by stitch': hasAct('decrease'),
  'several stitches cast on at an edge': hasAct('cast-on-more'),
  'several stitches cast off at an edge': hasAct('cast-off'),
  'from the left': ({ project }) => project.piece.startSide === 'left',
  'from the right': ({ project }) => project.piece.startSide === 'right',
  'a closed start': startsAs('closed'),
  'a start that is picked up': startsAs('picked-up'),
  'a start left on waste yarn': startsAs('on waste yarn'),
  'a hem that is hung': startsAs('joined'),
  'a hem over eyelets': ({ knitted }) => knitted.eyelets.length > 0,
  'cast off at the end': endsAs('cast-off'),
  'taken off on waste yarn': endsAs('waste-yarn'),
  'put on a thread': endsAs('on-a-thread'),
  'several sizes': ({ project }) => sizesOf(project).length > 1,
  'a hem with a gauge of its own': ({ project: { piece } }) => piece.hemRows > 0 && piece.hem.gauge !== null,
  'sections with gauges of their own': ({ project: { piece } }) => piece.sections.some(({ gauge }) => gauge !== null),
  'a contrast on rows of two gauges': ({ project, strands }) =>
    contrasts(strands).some((strand) => new Set(rowsOf(strand).map((row) => gaugeOfRow(project.piece, row))).size > 1),
  // The machine.
  'needles chosen unseen': ({ project }) => project.machine.chooses === 'ahead-unseen',
  'needles chosen by hand': ({ project }) => project.machine.chooses === 'by-hand',
  'fixed places': ({ project }) => project.machine.places !== 'any-needle',
  'a machine that increases at the carriage alone': ({ project }) => project.machine.increases === 'carriage-side',
  'without weights': ({ project }) => !project.machine.weights,
  // The patterns.
  'one band': ({ project }) => bandsOf(project).length === 1,
  'several bands': ({ project }) => bandsOf(project).length > 1,
  'all-over': ({ project }) => allOversOf(project).length > 0,
  'two all-overs': ({ project }) => allOversOf(project).length > 1,
  'bands and an all-over': ({ project }) => allOversOf(project).length > 0 && bandsOf(project).length > 0,
  'patterns that touch': plainBetween(0),
  'one plain row between patterns': plainBetween(1),
  'two plain rows between patterns': plainBetween(2),
  'three plain rows between patterns': plainBetween(3),
  'end needles on': ({ plan }) => plan.endNeedleRows.size > 0,
  'end needles off': ({ plan }) => plan.endNeedleRows.size === 0,
  'end needles on a blank row': ({ plan }) => plan.rows.some(({ endNeedles }) => endNeedles?.isBlank),
  'a figure at the edge': ({ knitted: { fabric } }) =>
    fabric.some(({ runs }) => runs[0]?.yarn !== fabric[0]?.runs[0]?.yarn),
  anchors: ({ plan: { rows } }) => rows.some(({ anchors }) => anchors.length > 0),
  'anchors of main': ({ project, plan: { rows, fabric } }) =>
    rows.some(({ row, anchors }) =>
      anchors.some((needle) => fabric.cells[(row - 1) * fabric.width + needle - fabric.first] === project.mainYarn),
    ),
  'anchors in an order of colours': ({ project, plan: { rows } }) =>
    rows.some(({ anchors }) => anchors.length > 0) && project.patterns.some(({ colourOrder }) => colourOrder !== null),
  'anchors beside own balls': ({ strands, plan: { rows } }) =>
    rows.some(({ anchors }) => anchors.length > 0) && strands.some(({ name }) => name.includes(' of group ')),
  // Yarns and balls.
  'a row all in contrast': ({ project, knitted: { fabric } }) =>
    fabric.some(({ runs }) => runs.length === 1 && runs[0]?.yarn !== mainOf(project)),
  'two yarns in contrast in turn': ({ project, knitted }) => contrastsByRow(project, knitted).size > 1,
  'an order of colours up the rows': ({ project }) => project.patterns.some(({ colourOrder }) => colourOrder !== null),
  'three yarns in a row': ({ knitted: { fabric } }) => fabric.some((row) => new Set(yarnsOf(row).values()).size > 2),
  'own balls': ({ strands }) => strands.some(({ name }) => name.includes(' of group ')),
  'own balls that are fed': ({ strands }) =>
    strands.some(({ name, lengths }) => name.includes(' of group ') && lengths.some(({ ball }) => ball === null)),
  'balls laid by hand': hasAct('lay'),
  'a ball fed and laid': ({ order }) =>
    actsOf(order).some((act) => act.act === 'thread' && typeof act.ball === 'number'),
  'balls that are crossed': ({ order }) =>
    actsOf(order).some((act) => act.act === 'lay' && (act.crosses?.length ?? 0) > 0),
  'main that is not the first yarn': ({ project }) => project.mainYarn > 0,
  // The strands.
  'a float of main': hasFloat((name) => name === 'main'),
  'a float of main at an edge': ({ strands, plan: { rows } }) =>
    strands.some(
      ({ name, lengths }) =>
        name === 'main' &&
        lengths.some(({ measured: { floats } }) =>
          floats.some(
            ({ row, first, last }) => first === rows[row - 1]?.edges.first || last === rows[row - 1]?.edges.last,
          ),
        ),
    ),
  'a float of a contrast': hasFloat((name) => name !== 'main'),
  'floats hooked up': hasAct('hook-up'),
  'floats latched up': hasAct('latch-up'),
  'a float brought within the limit': ({ plan: { rows } }) =>
    rows.some(({ floats }) => floats.some(({ held, isOver }) => held.length > 0 && !isOver)),
  'a float over the limit': ({ plan: { rows } }) => rows.some(({ isOver }) => isOver),
  'a limit in stitches alone': ({ project: { piece } }) => piece.floatLimit.mm === null,
  'a carry over other rows': hasCarry(({ row, toRow }) => toRow > row + 1),
  'a carry across the figure': hasCarry(({ row, toRow, stitches }) => toRow > row + 1 && stitches > 1),
  'main carried over a row': ({ strands }) =>
    strands.some(({ name, lengths }) => name === 'main' && lengths.some(({ measured }) => measured.carries.length > 0)),
  'a carry over the limit': ({ plan: { rows } }) => rows.some(({ carries }) => carries.some(({ isOver }) => isOver)),
  'a contrast cut and joined again': ({ strands }) =>
    strands.some(({ name, lengths }) => name !== 'main' && lengths.length > 1),
  'main cut and joined again': ({ strands }) =>
    strands.some(({ name, lengths }) => name === 'main' && lengths.length > 1),
  'a yarn cut that would go too far aside': ({ plan: { rows } }) =>
    rows.some(({ cuts }) => cuts.some(({ because }) => because === 'far-aside')),
  wraps: hasAct('wrap'),
  'a wrapping strand folded in two': ({ knitted: { wrapping } }) =>
    wrapping.some(({ wraps }) => new Set(wraps.map(({ edge }) => edge)).size > 1),
  'a wrapping strand for one edge': ({ knitted: { wrapping } }) =>
    wrapping.some(({ wraps }) => new Set(wraps.map(({ edge }) => edge)).size === 1),
  'many wrapping strands': ({ knitted: { wrapping } }) => wrapping.length > 4,
} satisfies Record<string, Is>;

export type Kind = keyof typeof KINDS;

export const ALL_KINDS = Object.keys(KINDS) as readonly Kind[];

export function kindsOf(piece: KnittedPiece): Kind[] {
  return ALL_KINDS.filter((kind) => KINDS[kind](piece));
}

function actsOf(order: OrderJson) {
  return order.flatMap((item) => (item.kind === 'stop' ? item.acts : []));
}

function hasAct(name: ReturnType<typeof actsOf>[number]['act']): Is {
  return ({ order }) => actsOf(order).some(({ act }) => act === name);
}

function startsAs(start: Knitted['start']): Is {
  return ({ knitted }) => knitted.start === start;
}

function endsAs(how: string): Is {
  return ({ knitted }) => knitted.finish.some((finish) => finish.how === how);
}

/** Exactly so many rows without a pattern between two. */
function plainBetween(rows: number): Is {
  return ({ plan: { patterns } }) =>
    patterns.some((below) => patterns.some((above) => above.firstRow === below.lastRow + 1 + rows));
}

type Measured = Strand['lengths'][number]['measured'];

function hasFloat(isOf: (name: string) => boolean): Is {
  return ({ strands }) =>
    strands.some(({ name, lengths }) => isOf(name) && lengths.some(({ measured }) => measured.floats.length > 0));
}

function hasCarry(is: (carry: Measured['carries'][number]) => boolean): Is {
  return ({ strands }) => strands.some(({ lengths }) => lengths.some(({ measured }) => measured.carries.some(is)));
}

function contrasts(strands: readonly Strand[]): Strand[] {
  return strands.filter(({ name }) => name !== 'main');
}

function rowsOf({ lengths }: Strand): number[] {
  return lengths.flatMap(({ way }) => way.map(({ row }) => row));
}

function mainOf({ yarns, mainYarn }: ProjectAt): string {
  return yarns[mainYarn]?.name ?? '';
}

/** The contrast of rows that have one alone. */
function contrastsByRow(project: ProjectAt, { fabric }: Knitted): ReadonlySet<string> {
  const found = new Set<string>();
  for (const row of fabric) {
    const yarns = [...new Set(yarnsOf(row).values())].filter((yarn) => yarn !== mainOf(project));
    if (yarns.length === 1) found.add(yarns[0] as string);
  }
  return found;
}
