/** Reading pictures in: what is on one, and the dialog that reads a chart out of a photo. */
import type { JoinSide, Overlap, Point } from '../../reading/index.ts';
import { capitalised } from '../marked.ts';
import { joins } from './joins.ts';
import { numbers as n } from './numbers.ts';
import { reading } from './reading.ts';

/** Pixels of the photo, as far as they tell. */
const at = ({ x, y }: Point): string => `${n.plain(x, 0)}, ${n.plain(y, 0)}`;

export const readingIn = {
  /** Asked where a picture can be taken in more than one way. */
  question: {
    title: 'What is on it?',
    file: (name: string, width: number, height: number): string => `${name}, ${width} × ${height} pixels`,
    picture: (name: string): string => `The picture ${name}`,
    opening: (name: string): string => `Opening ${name}…`,
  },
  /** Each way to take a picture in: what is on it, and what becomes of it. */
  importers: {
    cells: {
      label: 'One pixel for each cell',
      hint: 'Opens as a motif of that many stitches and rows, in a new project.',
    },
    chart: {
      label: 'A chart',
      hint: 'Graph paper, a printed chart or a punched card, photographed or scanned: its cells are read.',
    },
    picture: {
      label: 'Any picture',
      hint: 'Is reduced to as many stitches, rows and yarns as you like.',
    },
  },

  /** Pictures that are looked at in a dialog. */
  showAll: 'Show all of it',
  pictureKeys: 'Plus and minus zoom, 0 shows all of it. Zoomed in, arrow keys move it.',
  /** A corner that can be moved, clockwise from the top left, and where it is in the picture. */
  corner: (index: number, to: Point): string => `${reading.corners[index] ?? ''} corner, at ${at(to)}`,
  handleHelp: 'Arrow keys move it by a pixel, with Shift by ten. Pressed, it goes where the picture is pressed next.',

  /** Reading a chart out of a photo. */
  chart: {
    title: 'Read a chart from a photo',
    steps: { corners: '1. Set the corners', counts: '2. Check columns and rows', cells: '3. Check the cells' },
    photo: 'The photo, with the four corners of the chart',
    cornersNote:
      'Drag each ring to an outer corner of the chart; or press the ring and then its corner; or move it with the arrow keys, with Shift ten pixels.',
    settled: 'It is read between the lines that were found near your corners.',
    cornersMend: 'Drag the rings apart, each to its own corner of the chart.',
    finding: 'Looking for the chart. You can set its corners meanwhile.',
    whichChart: (count: number): string => `${n.count(count, 'chart')} were found. Which one is meant?`,
    chartOf: (index: number, columns: number, rows: number): string =>
      `${index + 1}: ${n.columns(columns)}, ${n.rows(rows)}`,
    confirm: 'The corners are right',
    confirmFirst: 'Look at the corners and say that they are right, or set them.',
    turn: 'Turn it clockwise',
    whole: 'The chart fills the picture',
    /** Four clicks, one after another. */
    click: 'Click the four corners',
    clickNext: (index: number): string => `Click the ${reading.corners[index] ?? ''} corner of the chart.`,
    clickHelp: 'Each corner of the chart is clicked in turn; Escape leaves the corners as they were.',
    clickStop: 'Leave them as they were',
    clickLeft: 'The corners are as they were.',
    clicked: 'The four corners are set.',
    cornerFields: 'Corners in numbers',
    across: 'From the left',
    down: 'From the top',
    cornerName: (index: number): string => capitalised(reading.corners[index] ?? ''),
    cornerAcross: (index: number): string => `${capitalised(reading.corners[index] ?? '')}, from the left`,
    cornerDown: (index: number): string => `${capitalised(reading.corners[index] ?? '')}, from the top`,
    pixels: 'px',
    straight: 'The chart straightened, with the lines between its cells',
    straightEmpty: 'The straightened chart comes here, once its corners are set.',
    columns: 'Columns',
    rows: 'Rows',
    asFound: 'Use what was found',
    kind: 'Told apart by',
    kinds: { colours: 'colours of yarns', ink: 'ink or holes', symbols: 'symbols in one ink' },
    yarns: 'Yarns',
    yarnsFound: 'as many as are found',
    figure: 'The figure is',
    figures: { dark: 'dark: ink on paper', light: 'light: holes over a light' },
    cells: (columns: number, rows: number): string => `What was read: ${n.columns(columns)}, ${n.rows(rows)}`,
    cellsHelp: (hasLetters: boolean): string =>
      `Arrow keys go from cell to cell.${hasLetters ? ' D and A go to the next doubtful cell and the one before; 1 to 9 say which yarn the cell is.' : ''} Enter takes the cell as it was read.`,
    cellsEmpty: 'What is read comes here, cell by cell.',
    /** Cells that are read out of a small copy of the photo, until the photo itself is read. */
    sketch: 'Read at a glance. The photo is being read exactly, and some cells may change.',
    sketchOnly: 'Read at a glance, not exactly: cells may be wrong.',
    isRead: 'The photo is read exactly.',
    takeLater: 'It can be used once it is read exactly.',
    mostYarns: (most: number): string =>
      `These are ${most} yarns, the most a motif holds. If the chart has more, those most alike were taken as one.`,
    doubtsNote: 'Diamonds mark doubtful cells.',
    before: 'Previous doubtful cell',
    next: 'Next doubtful cell',
    /** Where the eye is, what was read there, and how sure it is. */
    cell: (column: number, row: number, yarn: string, sure: number | null): string =>
      `Row ${row + 1}, column ${column + 1}: ${yarn}, ${sure === null ? 'checked' : `${n.percent(sure)} sure`}.`,
    cellSketched: (column: number, row: number, yarn: string): string =>
      `Row ${row + 1}, column ${column + 1}: ${yarn}, at a glance.`,
    noDoubts: 'No cell is doubtful.',
    asRead: 'Right as read',
    settle: 'This cell is',
    enlarged: (column: number, row: number): string => `Row ${row + 1}, column ${column + 1} in the photo, enlarged`,
    yarn: (index: number, isGround: boolean): string => (isGround ? 'ground' : `yarn ${index + 1}`),
    /** A chart that goes on over a further photo. */
    further: 'Add a further photo…',
    furtherTitle: 'Read a further photo of the chart',
    furtherNote: 'It shows some rows or columns that are read already, and goes on from there.',
    opening: 'Opening the photo…',
    leaveOut: 'Leave this photo out',
    seeJoin: 'See where they meet',
    joinTitle: 'Put the photos together',
    joinStep: '1. Check where they meet',
    joinCells: '2. Check the cells',
    joinPicture: 'The photos together, with a frame round what both show',
    joinEmpty: 'The photos come here, put together.',
    joinHow: (way: Overlap, differing: number): string => `The further photo goes on ${joins.said(way, differing)}.`,
    joinWhich: (ways: number): string => `It can go on in ${ways} ways. Which one is meant?`,
    joinWay: (way: Overlap): string => capitalised(joins.way(way)),
    joinMoreWays: (more: number): string => `${more} more can be set below.`,
    joinSide: 'The further photo goes on',
    joinSides: joins.sides,
    joinShared: (side: JoinSide): string => (joins.isUpright(side) ? 'Rows on both' : 'Columns on both'),
    joinConfirm: 'They meet like this',
    joinConfirmFirst: 'Look at where they meet and say that it is right, or set it.',
    joinBack: 'Back to the photo',
    stop: 'Stop',
    again: 'Continue',
    leaving: (settled: number): string =>
      `Leave without taking the chart? ${n.count(settled, 'cell')} that you checked would be lost.`,
    leave: 'Leave',
    stay: 'Stay',
    take: 'Use as the motif',
    takeNote: 'It takes the place of the motif on the bench. Undo brings that back.',
    taken: (columns: number, rows: number, doubtful: number): string =>
      `Chart read: ${n.size(columns, rows)}.${doubtful === 0 ? '' : ` ${n.count(doubtful, 'cell')} to settle.`}`,
  },
};

export type ImporterName = keyof typeof readingIn.importers;
