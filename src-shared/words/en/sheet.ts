/**
 * What is printed: the placement sheet, and the names of the files made from a
 * project. Its charts, its row list and what is wound for it have files of their
 * own. Names that people choose stand in rich text, never in marked text.
 */
import type { FinishedFace, Slot } from '../../bed/index.ts';
import type { Day } from '../../day/index.ts';
import type { SeamMatching } from '../../fabric/index.ts';
import type { ExportKind } from '../../host/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import type { Gauge, PieceSize } from '../../piece/index.ts';
import type { ActOf } from '../../plan/index.ts';
import type { AllOver } from '../../pattern/index.ts';
import { capitalised } from '../marked.ts';
import { fromMarked, rich, strong, type Rich } from '../rich.ts';
import { dates } from './dates.ts';
import { allOver } from './all-over.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { sections } from './sections.ts';
import { runningOrder } from './running-order.ts';
import { sheetCharts } from './sheet-charts.ts';
import { sheetGarment } from './sheet-garment.ts';
import { sheetRowList } from './sheet-row-list.ts';
import { winding } from './winding.ts';

type ShapingAct = ActOf<'increase' | 'decrease' | 'cast-off' | 'cast-on-more'>;

/** `96 to 124 stitches`; a body names where it has how many. */
function stitches({ kind, widths: [castOn, ...others] }: PieceSize): string {
  const count = castOn?.stitches ?? 0;
  if (kind === 'body') {
    const named = others.map((other) => `${other.stitches} at the ${other.at}`);
    return n.list([`${n.stitches(count)} at the cast-on`, ...named]);
  }
  const top = others.at(-1)?.stitches ?? count;
  return `${n.fromTo(count, top)} ${top === 1 ? 'stitch' : 'stitches'}`;
}

/** `34.3 to 44.3`; of a body as many as it has counts of stitches. */
function widths({ kind, widths: found, straightMm }: PieceSize, unit: LengthUnit): string {
  const figure = (mm: number): string => lengths.figure(mm, unit);
  if (kind === 'body') return n.list(found.map(({ mm }) => figure(mm)));
  const [first, last] = kind === 'rectangle' ? straightMm : [found[0]?.mm ?? 0, found.at(-1)?.mm ?? 0];
  return n.fromTo(figure(first), figure(last));
}

export const sheet = {
  title: (project: string): string => `${project}: placement sheet`,
  subject: 'Placement sheet for knitting colour motifs by machine',
  pageTitle: (page: number, pages: number): string => `Page ${page} of ${pages}`,
  /** `Page 2 of 6 of sleeve, size M`, where pages of several pieces stand one after the other. */
  pageOf: (title: string, piece: string): string => `${title} of ${piece}`,
  runningHead: 'Placement sheet',
  pageOnDay: (page: number, pages: number, day: Day): string => `Page ${page} of ${pages} · ${dates.day(day)}`,

  /** `Sleeve, 96 to 124 stitches × 140 rows, 34.3 to 44.3 × 35 cm`. */
  size(name: string, size: PieceSize, unit: LengthUnit): Rich {
    const long = lengths.length(size.lengthMm, unit);
    return rich`${capitalised(name)}: ${strong(`${stitches(size)} × ${n.rows(size.rows)}`)}, ${widths(size, unit)} × ${long}`;
  },
  /** The gauge of the piece, then those of sections that differ. */
  colourway: (name: string): string => `Colourway: ${name}.`,
  gauge(gauge: Gauge, own: Parameters<typeof sections.gauges>[0], unit: LengthUnit): string {
    const said = `${lengths.gaugeCounts(gauge, unit)} in ${lengths.gaugeLength(unit)}`;
    return own.length === 0 ? said : `${said} (${sections.gauges(own, unit)})`;
  },
  seamAllowance(left: number, right: number): string {
    if (left === 0 && right === 0) return 'no seam allowance';
    return left === right
      ? `seam allowance of ${n.stitches(left)} at each edge`
      : `seam allowance of ${n.stitches(left)} at the left edge and ${right} at the right`;
  },

  figureCaption: (face: FinishedFace, scale: number, isOneGauge: boolean): string =>
    `As on the needles, drawn at 1 : ${n.plain(scale)}${isOneGauge ? '' : ', each section by its own gauge; the ruler below is that of row 1'}. The purl side faces you${
      face === 'knit' ? '; the knit side will be seen' : ' and will be seen'
    }. At the right, the rows where something changes, in strong type those where a pattern begins or ends.`,
  figureDescription(
    piece: string,
    groups: readonly {
      readonly first: string;
      readonly last: string;
      readonly firstRow: number;
      readonly lastRow: number;
    }[],
    allOvers: readonly { readonly firstRow: number; readonly lastRow: number }[],
  ): string {
    const said = groups.map(
      ({ first, last, firstRow, lastRow }) => `${first} to ${last}, ${n.rowSpan(firstRow, lastRow)}`,
    );
    const filled = allOvers.map(({ firstRow, lastRow }) => n.rowSpan(firstRow, lastRow));
    const parts = [
      groups.length === 0 ? '' : `${n.count(groups.length, 'group')}: ${said.join('; ')}`,
      allOvers.length === 0 ? '' : `${n.count(allOvers.length, 'all-over')}: ${filled.join('; ')}`,
    ].filter((part) => part !== '');
    return `${piece}, drawn to scale, ${parts.length === 0 ? 'plain' : `with ${parts.join('; and ')}`}`;
  },
  labelsLeft: (count: number): string =>
    `${n.count(count, 'needle label')} had no room in the drawing; the table of groups has ${count === 1 ? 'it' : 'them'}.`,
  /** Motifs that stand on the piece under a letter. */
  lettered: (motifs: readonly { readonly letter: string; readonly name: string }[]): Rich =>
    motifs.flatMap(({ letter, name }, index) => rich`${index === 0 ? '' : '   '}${strong(letter)} ${name}`),
  strip: {
    figure: (row: number): string => `row ${row}, visible`,
    blocks: (row: number): string => `row ${row}, blocks`,
    both: (row: number): string => `row ${row}, stitches`,
    /** What of a margin the seam leaves. */
    margin: (stitches: number, clear: number): string => `${stitches} (${clear} clear of the seam)`,
  },

  /** Below the first and last of rows at even distances. */
  everyRows: (step: number): string => (step === 1 ? 'each row' : `every ${n.ordinal(step)}`),

  allOvers: {
    title: 'All-over patterns',
    /** `All-over 1, lozenges: rows 2–100, from L49 to R49; 40 copies whole, 20 cut.` */
    lies(facts: {
      readonly number: number;
      readonly motif: string;
      readonly copy: { readonly width: number; readonly height: number };
      readonly firstRow: number;
      readonly lastRow: number;
      readonly first: readonly Slot[];
      readonly step: number;
      readonly isHalfOff: boolean;
      readonly centre: AllOver['centre'];
      readonly shift: number;
      readonly seam: SeamMatching;
      readonly whole: number;
      readonly clipped: readonly unknown[];
      readonly leftOut: readonly unknown[];
    }): Rich {
      const { motif, copy, firstRow, lastRow, first, step, isHalfOff, whole, clipped, leftOut } = facts;
      const counts = [
        `${n.copies(whole)} whole`,
        clipped.length > 0 ? `${clipped.length} cut by the edges` : '',
        leftOut.length > 0 ? `${leftOut.length} left out` : '',
      ].filter((part) => part !== '');
      return rich`${strong(`All-over ${facts.number + 1}`)}, ${motif}, ${n.rowSpan(firstRow, lastRow)}: copies of ${n.size(copy.width, copy.height)}${
        first.length === 0 ? '' : rich`, starting on row ${firstRow} ${strong(allOver.needles(first, copy.width))}`
      }.${allOver.stepped(step, copy.width)} ${n.list(counts)}.${
        isHalfOff ? ` ${allOver.halfOff(facts)}` : ''
      } ${fromMarked(allOver.seam.summary(facts.seam))}`;
    },
  },

  groups: {
    title: 'Groups, left to right',
    columns: {
      group: 'Group',
      motif: 'Motif',
      first: 'Left-hand needle',
      last: 'Right-hand needle',
      seen: 'Visible',
      rows: 'Rows',
      copies: 'Copies',
    },
    copies: (across: number, up: number): string => (up === 1 ? String(across) : `${across} × ${up}`),
    spacesTitle: 'Spaces, left to right',
    spacesColumns: { what: 'Stitches', spaces: 'Margin, gaps, margin' },
    /** Of the row that the groups stand on: on others of a shaped piece the margins are others. */
    needles: (row: number): string => `row ${row}, needles`,
    seen: (row: number): string => `row ${row}, visible`,
    blocks: (row: number): string => `row ${row}, pattern blocks`,
    clear: (row: number): string => `row ${row}, clear of the seam`,
    acrossSeam: (row: number): string => `row ${row}, across the seam`,
    spaces: (counts: readonly number[]): string => counts.join(' / '),
    none: 'Nothing is placed on this piece.',
  },

  yarn: winding.yarn,
  strands: winding.strands,

  findings: {
    title: 'What to watch',
    warningMark: '!',
    noteMark: '–',
    /** The same again elsewhere, from the lowest of all to the highest. */
    alike: (more: number, rows: readonly [number, number]): string =>
      `${n.count(more, 'more place')} alike, ${n.rowSpan(rows[0], rows[1])} in all.`,
    /** Of which there are too many to print one by one. */
    more: (count: number, rows: readonly [number, number]): string =>
      `${n.count(count, 'more place')} of the same kind, shorter than these, on ${n.rowSpan(rows[0], rows[1])}.`,
    takenTitle: 'Done about it',
    doneMark: '✓',
    remediesTitle: 'What would help',
  },
  cautions: { title: 'Take care', mark: '!' },
  missingCharacters: (mark: string): string =>
    `${mark} stands for a character that this sheet's typeface does not have.`,

  chart: sheetCharts,
  garment: sheetGarment,

  knitting: {
    about:
      'What stands beside a reading is done when the row counter reads it, before the row is knitted. COL: carriage on the left, COR: carriage on the right.',
    columns: {
      counter: 'Counter reads',
      row: 'Before row',
      carriage: 'Carriage at',
      acts: 'Do this',
      knit: 'Then',
      left: 'Left edge',
      right: 'Right edge',
      also: 'Also',
      stitches: 'Stitches then',
      knitTo: 'Knit to',
    },
    shapingTitle: 'Shaping',
    end: 'end',
    /** `increase L49`, beside the name of the edge. */
    shaping(act: ShapingAct): string {
      switch (act.kind) {
        case 'increase':
        case 'decrease':
          return `${act.kind} ${runningOrder.needles(act.needles)}`;
        case 'cast-off':
          return `cast off ${n.run(act.needles)}`;
        case 'cast-on-more':
          return `cast on ${n.run(act.needles)}`;
      }
    },
  },

  notes: {
    title: 'Notes',
    room: 'To write down what you find as you knit, and what you would do otherwise next time.',
    project: 'On the project',
    piece: 'On the piece',
  },
  ruler: {
    cm: '50 mm: if it measures otherwise, the page was not printed at its own size.',
    in: '2 in: if it measures otherwise, the page was not printed at its own size.',
  },

  rowList: sheetRowList,

  /** What the files made from a project are called after its name. */
  files: {
    'chart-png': 'chart',
    'chart-svg': 'chart',
    'sheet-pdf': 'placement',
    'rows-csv': 'rows',
    /** Where nothing of the project's name can stand in a file name. */
    unnamed: 'project',
    /** In the place of a piece's name, of a file of all of them. */
    allPieces: 'all pieces',
  } satisfies { readonly [K in ExportKind | 'unnamed' | 'allPieces']: string },
};
