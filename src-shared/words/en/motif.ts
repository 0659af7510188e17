/** The Motif bench: tools, panel, the line under the pointer. Strong numbers are marked; see ../marked.ts. */
import type { LengthUnit } from '../../length/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

/** By how many stitches and rows something sticks out of the chart, as it is seen. */
interface Overhang {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly isWhole: boolean;
}

/** `3 stitches at the left and 1 row at the bottom`. */
function overhangParts({ left, right, top, bottom }: Overhang): string {
  const parts = [
    { count: left, phrase: `${n.stitches(left)} at the left` },
    { count: right, phrase: `${n.stitches(right)} at the right` },
    { count: bottom, phrase: `${n.rows(bottom)} at the bottom` },
    { count: top, phrase: `${n.rows(top)} at the top` },
  ];
  return n.list(parts.filter(({ count }) => count > 0).map(({ phrase }) => phrase));
}

/** `chalk, contrast`; a yarn named after its part is named once. */
function yarnAndPart(name: string, isMain: boolean): string {
  const part = isMain ? 'main' : 'contrast';
  return name === part ? part : `${name}, ${part}`;
}

/** How shapes between two corners are drawn. */
const corners = 'Drag, or press where it begins and then where it ends.';

export const motif = {
  /** Under the icons of the tools, whose commands are called something longer. */
  tools: {
    draw: 'Draw',
    erase: 'Erase',
    line: 'Line',
    rectangle: 'Rectangle',
    ellipse: 'Ellipse',
    fill: 'Fill',
    pick: 'Pick',
    select: 'Select',
    stamp: 'Stamp',
    trace: 'Trace',
  },
  /** Shapes between two corners. */
  shapes: {
    begun: (tool: string, column: number, row: number): string =>
      `${tool} from row ${row + 1}, stitch ${column + 1}. Arrow keys stretch it, Space ends it, Escape cancels.`,
    begunByPress: (tool: string, column: number, row: number): string =>
      `${tool} from row ${row + 1}, stitch ${column + 1}. Press where it ends; Escape cancels.`,
    laid: (tool: string): string => `${tool} drawn.`,
    givenUp: 'Cancelled.',
  },
  /** Selected and lifted cells. */
  select: {
    byButtons: 'Move by buttons',
    /** Short, on buttons side by side. */
    place: 'Place it',
    letGo: 'Let go',
    /** What is seen of it, for who does not drag. */
    held: 'Drag it, or press it and then where it goes.',
    takenHold: (column: number, row: number): string =>
      `Taken hold of row ${row + 1}, stitch ${column + 1}. Press where this cell goes, and the rest goes with it.`,
    /** `keys`: the shortcut that moves it; null where it is switched off. */
    selected: (width: number, height: number, keys: string | null): string =>
      `Selected: ${n.size(width, height)}. ${keys === null ? '' : `${keys} moves it, `}Escape lets it go.`,
    /** All cells of a yarn, and the box that they lie in. */
    selectedYarn: (cells: number, yarn: string, width: number, height: number, keys: string | null): string =>
      `Selected: ${n.count(cells, 'cell')} of ${yarn}, within ${n.size(width, height)}. ${keys === null ? '' : `${keys} moves them, `}Escape lets them go.`,
    nothing: 'Nothing is selected.',
    copied: 'Copied.',
    cut: 'Cut.',
    cleared: 'Cleared.',
    lifted: 'Arrow keys move it, Enter places it, Escape cancels.',
    turned: (label: string): string => `${label}: done with what is lifted.`,
    at: (column: number, row: number): string => `Its lower left corner: row ${row + 1}, stitch ${column + 1}`,
    laid: 'Placed.',
  },

  /** Cells over the edge of the chart: while they are lifted, and after they were laid. */
  overhang: {
    lifted: (overhang: Overhang): string =>
      overhang.isWhole
        ? 'All of it is outside the chart. Placed here, it is left off.'
        : `Outside the chart: ${overhangParts(overhang)}. Placed here, they are left off.`,
    leftOff: (overhang: Overhang, canUndo: boolean): string => {
      if (!overhang.isWhole) {
        return `Left off outside the chart: ${overhangParts(overhang)}.${canUndo ? ' Undo brings them back.' : ''}`;
      }
      return canUndo
        ? 'All of it was outside the chart and is left off. Undo brings it back.'
        : 'All of it was outside the chart: nothing was placed.';
    },
  },

  /** Commands for the whole motif. */
  whole: {
    done: (label: string): string => `${label}: done.`,
    nothing: 'Nothing to change.',
    changedMeanwhile: 'The chart was changed while it was measured: nothing was done.',
  },

  zoom: (scale: number): string => n.percent(scale),
  zoomInFull: (scale: number): string => `${n.percent(scale)} of life size`,
  zoomLabel: 'Size on the screen',
  yarnTaken: (name: string): string => `Drawing with ${name}.`,
  yarnAdded: (name: string): string => `Added ${name}, and drawing with it.`,
  wholeInView: 'The whole motif is in view.',
  nameMissing: 'A name has 1 to 80 letters.',
  newYarn: (number: number): string => `yarn ${number}`,

  /** Above the chart: what the hand needs. */
  strip: {
    label: 'Yarns and drawing options',
    options: 'Drawing options',
    /** Menus of what is done to the whole chart, or to what is selected. */
    deeds: { turn: 'Flip and shift', lines: 'Columns and rows', recolour: 'Recolour', select: 'Selection' },
  },

  stage: {
    label: (name: string, width: number, height: number): string =>
      `Chart of ${name}, ${n.size(width, height)}, row 1 at the bottom`,
    help: 'Arrow keys move from cell to cell, Space uses the tool, Shift with an arrow key draws along. A line, rectangle or ellipse starts and ends with Space; Escape cancels. Home and End go to the ends of the row, with Ctrl to the first and the last cell; Page Up and Page Down move 10 rows.',
    oneRepeat: (width: number, height: number, widthMm: number, heightMm: number, unit: LengthUnit): string =>
      `One repeat: ${n.size(width, height)}, ${lengths.acrossUnbroken(widthMm, heightMm, unit)}`,
    neighbours: 'neighbouring copies shown faintly',
    seenFrom: { knit: 'the knit side is seen', purl: 'the purl side is seen' },
    /** Of the floats on the purl side, in one copy. */
    floats: (over: number, longest: number): string => {
      if (longest === 0) return 'no floats';
      const far = `longest float ${n.stitches(longest)}`;
      return over === 0 ? far : `${n.count(over, 'float')} over the limit, ${far}`;
    },
    empty: 'Nothing is drawn yet',
    emptyHint: 'Draw with the pointer, or with the arrow keys and Space. Open, drop or paste a picture to read it in.',
    /** One cell, to assistive technology. */
    cell: (column: number, row: number, yarn: string): string => `Row ${row + 1}, stitch ${column + 1}, ${yarn}`,
    row: (row: number): string => `row ${row + 1}`,
    column: (column: number): string => `stitch ${column + 1}`,
    /** What the pointer is on in a copy around the chart, from what that copy repeats. */
    inCopy: (said: string): string => `${said} (in a copy)`,
  },

  /** `Row 7, stitch 6 · chalk, contrast`. */
  point: (column: number, row: number, yarn: string, isMain: boolean): string =>
    `Row ${row + 1}, stitch ${column + 1} · ${yarnAndPart(yarn, isMain)}`,

  whatItIs: {
    title: 'What it is',
    /** How large it comes out. */
    size: (widthMm: number, heightMm: number, unit: LengthUnit): string =>
      `Knitted it is **${lengths.acrossUnbroken(widthMm, heightMm, unit)}**.`,
  },

  yarns: {
    choose: 'Drawing yarn',
    nameAndPart: yarnAndPart,
    main: 'main',
    /** Beside the yarns, short. */
    add: 'Add',
    /** WCAG contrast against the main yarn: `5.1 : 1`. */
    ratio: (ratio: number): string => `${ratio.toFixed(1)} : 1`,
    ratioInFull: (ratio: number): string => `contrast ratio ${ratio.toFixed(1)} to 1 against the main yarn`,
    faint: (name: string, main: string): string => `${name} hardly shows against ${main}.`,
    edit: (name: string): string => `Change ${name}`,
    name: 'Name',
    colour: 'Colour',
    /** As the band of a ball says it. */
    countUnknown: (name: string): string => `The count of ${name} is not known: only its length is told.`,
    useAsMain: 'Use as main',
    useAsMainHint: 'It becomes the ground: the yarn of the plain fabric.',
    remove: 'Remove',
    done: 'Done',
  },

  size: {
    title: 'Motif',
    name: 'Name',
    more: 'Name and resizing',
    columns: 'Stitches',
    rows: 'Rows',
    columnsAt: 'Add or remove columns',
    rowsAt: 'Add or remove rows',
    sides: { left: 'at the left', right: 'at the right', top: 'at the top', bottom: 'at the bottom' },
    shows: 'Drawn',
    showing: { worn: 'as worn', needles: 'as on the needles' },
    showsNote: {
      worn: 'As it will be seen; where that is the knit side, the needles get its mirror image.',
      needles: 'As you see it on the bed while knitting.',
    },
    isLettering: 'Has lettering',
    isLetteringHint: 'You are warned where they would be seen mirrored.',
  },

  drawing: {
    /** How the tool in hand is used, in one or two short lines. */
    hints: {
      draw: 'The right button, or the eraser of a pen, draws the ground.',
      erase: 'Drag over cells to give them the ground.',
      line: corners,
      rectangle: corners,
      ellipse: corners,
      fill: 'Press an area to give it the drawing yarn.',
      pick: 'Press a cell to draw with its yarn.',
      select: 'Drag over cells, or press two corners.',
      stamp: 'Press where a copy goes.',
      trace: 'Drag the picture, its corners or the ring above it; arrow keys nudge it.',
    },
    filledShapes: 'Filled',
    fillEverywhere: 'Everywhere of its colour',
    takesAway: 'Drawing on a drawn cell takes it away',
    symmetry: 'Symmetry',
    symmetries: {
      none: 'none',
      'left-right': 'left and right',
      'up-down': 'up and down',
      both: 'both ways',
      turning: 'half turn',
    },
    symmetryAnnounced: {
      none: 'No symmetry',
      'left-right': 'Left and right alike',
      'up-down': 'Up and down alike',
      both: 'Both ways alike',
      turning: 'Alike after a half turn',
    },
    copiesFollow: 'All copies follow',
    copiesFollowHint: 'Drawing in one copy draws in all.',
    copies: 'Size and step of the copies',
    copiesAre: (width: number, height: number): string => `Size and step of the copies: ${n.size(width, height)}`,
    copyWidth: 'Stitches in a copy',
    copyHeight: 'Rows in a copy',
    copiesLie: 'Copies lie',
    copiesLaid: { straight: 'straight', columns: 'in columns, as a half drop', courses: 'in rows, as bricks' },
    copiesStep: { columns: 'Step each column of copies up by', courses: 'Step each row of copies right by' },
    halfStep: (half: number): string => `${half} for half a copy`,
    neighbours: 'Show neighbours',
    showing: 'Shown as',
    showings: { chart: 'chart', knit: 'fabric, knit side', purl: 'fabric, purl side' },
    cellShape: 'Cell shape',
    cellShapes: { knitted: 'as knitted', square: 'square' },
  },
};
