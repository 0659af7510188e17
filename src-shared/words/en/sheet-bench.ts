/** The Sheet bench: what will be printed, and the buttons that write it. */
import type { Shows } from '../../bed/index.ts';
import type { ExportKind as Kind } from '../../host/index.ts';
import { numbers as n } from './numbers.ts';

/** `four`. */
const inWords = (count: number): string => ['none', 'one', 'two', 'three', 'four', 'five', 'six'][count] ?? `${count}`;

/** `84 kB`. */
function size(bytes: number): string {
  return bytes < 1000 ? `${bytes} bytes` : bytes < 1e6 ? `${n.plain(bytes / 1e3, 0)} kB` : `${n.plain(bytes / 1e6)} MB`;
}

export const sheetBench = {
  title: 'What will be printed',
  pages: (pages: number, paper: string): string =>
    `The placement sheet takes **${n.count(pages, 'page')}** of ${paper}.`,
  trueToPrint: 'What you see here is what prints.',
  drawing: 'The pages are being drawn…',
  drawn: (drawn: number, pages: number): string => `${drawn} of ${n.count(pages, 'page')} drawn.`,
  allDrawn: (pages: number): string => (pages === 1 ? 'The page is drawn.' : `All ${pages} pages are drawn.`),
  pagesLabel: 'Pages of the placement sheet',
  noSheet: 'There is no sheet yet',
  toPiece: 'Go to the piece',
  piece: 'Piece',
  allPieces: (pieces: number): string => `all ${pieces} pieces`,
  ofSize: 'Size',
  allSizes: (sizes: number): string => `all ${sizes} sizes`,
  paper: 'Paper',
  papers: { a4: 'A4', letter: 'Letter' },
  charts: 'Charts',
  chartsDrawn: {
    both: 'on the needles and as worn',
    needles: 'as on the needles',
    worn: 'as worn',
  } satisfies { readonly [Way in 'both' | Shows]: string },
  fit: 'Preview',
  fits: { width: 'as wide as the window', page: 'whole pages' },
  print: {
    button: 'Print…',
    about: 'on the paper chosen; a page that is wide comes out in landscape. In the dialog, leave the scale at 100 %.',
    /** On paper, where the browser was asked to print before the program had loaded what that takes. */
    byCommand: (keys: string): string =>
      `To print the placement sheet, use Print in Walewright (${keys} in its window).`,
    printed: 'The sheet went to the printer.',
  },
  writeTitle: 'Export files',
  /** Of which pieces in which sizes files are made, where it is more than one. */
  scope(pieces: number | null, sizes: number | null): string {
    const of = [
      ...(pieces === null ? [] : [`all ${pieces} pieces`]),
      ...(sizes === null ? [] : [`all ${sizes} sizes`]),
    ];
    const sheets =
      pieces === null
        ? 'a file for each size'
        : `${sizes === null ? 'one file' : 'one file for each size'}, with a first page of the yarn that all pieces take`;
    return `Files are made of ${n.list(of)}, named by project, piece and size. The placement sheets are ${sheets}.`;
  },
  intoFolder: 'You choose a folder, and are asked before a file there is replaced.',
  /** What a button that writes says, and what it is good for. */
  kinds: {
    'sheet-pdf': { button: 'Placement sheet (PDF)', about: 'to print and lay beside the machine' },
    'chart-png': { button: 'Chart image (PNG)', about: 'one repeat, in knitted proportion' },
    'chart-svg': { button: 'Chart drawing (SVG)', about: 'the same as lines, for any size' },
    'rows-csv': { button: 'Row list (CSV)', about: 'every row, for a spreadsheet' },
  } satisfies { readonly [K in Kind]: { button: string; about: string } },
  all: (kinds: number): string => `Export all ${inWords(kinds)}`,
  writing: 'Exporting…',
  made: (made: number, of: number): string => `${made} of ${n.count(of, 'file')} made.`,
  stop: 'Cancel the export',
  stopped: 'Cancelled: nothing was exported.',
  written: (files: number, folder: string): string => `${n.count(files, 'file')} exported to ${folder}`,
  file: (name: string, bytes: number): string => `${name}, ${size(bytes)}`,
  size,
};
