/** What the command line says: its help, and its answers to people. */
import { proposedOf, type Version } from '../../motif/repeat/index.ts';
import type { JoinSide } from '../../reading/index.ts';
import { capitalised } from '../marked.ts';
import { joins } from './joins.ts';
import { numbers as n } from './numbers.ts';
import { placement } from './placement.ts';

const RUN = 'npm run -s cli --';

const commands = {
  measure: 'Says what a drawing is: size, blank edges, repeat, steps, slips and trims.',
  read: 'Reads a chart out of a photo or scan and writes it as a motif.',
  place: 'Says on which needles groups of copies go, best first, and why.',
  plan: 'Says row by row what to knit, wrap and look out for.',
  follow: 'Reads out what to do from casting on to casting off, at each reading of the row counter.',
  sizes: 'Says how each size of a project comes out, side by side.',
  export: 'Exports the chart, the placement sheet and the row list of a project.',
  collection: 'Lists the motifs of the collection, found by name, size, repeat or yarn.',
  keep: 'Keeps a motif in the collection, where every project can have it.',
  demo: 'Does the whole job with the sample project, and prints its plan.',
} as const;

/** What an option takes (null: nothing) and what it is for. */
const options = {
  ground: ['COLOUR', 'the ground, as #rrggbb or the name of a yarn; found by itself if left out'],
  stitches: ['N', 'stitches of the piece; an odd one stands on the right'],
  copies: ['N,N,…', 'copies in each group, left to right, such as 3,3'],
  rule: ['RULE', `${placement.written.replace('seam', 'seam (default)')} with the left-hand needle of each group`],
  'even-out': ['WHAT', 'what is spaced evenly, what is seen (default) or the pattern blocks: figure or blocks'],
  'seam-allowance': ['N', 'stitches on each side that the seam takes in; 0 if left out'],
  shows: ['WHAT', 'whether the chart is drawn as worn (default) or as on the needles: worn or needles'],
  'finished-face': ['FACE', 'the side worn outside: knit (default) or purl'],
  whole: [null, 'a copy is all drawn columns, not the true repeat'],
  bed: ['N', 'needles of the machine; not checked if left out'],
  choice: ['K', 'take the K-th placing that "place" lists; 1 if left out'],
  rows: ['N', 'rows of the piece; to the end of the hem, or of the motif, if left out'],
  hem: ['N', 'rows of a folded hem: its lower half is the facing, the motif is centred on its outside'],
  from: ['ROW', 'the row to go on with; what is set at the machine before it is said first'],
  'first-row': ['N', 'the row that the motif starts on'],
  gauge: ['28x40', 'stitches and rows in 10 cm'],
  'start-side': ['SIDE', 'where the carriage stands before row 1: left or right (default)'],
  'float-limit': ['N', 'the longest float and carry that may pass, in stitches; instead of 5 stitches or 25 mm'],
  'own-balls': [null, 'a ball of contrast for each group'],
  'long-floats': ['HOW', 'what is done about floats over the limit: left (default), hooked-up or latched-up'],
  'long-carries': ['HOW', 'what is done about carries over the limit: carried (default) or cut, and joined again'],
  anchors: [
    'N',
    'anchor stitches are added, so that no float is over N stitches; 0: floats stay as they are (default)',
  ],
  'anchors-behind': [null, 'with --anchors, behind the figure too, which speckles it with the main yarn'],
  'third-yarn': ['HOW', 'rows of three yarns or more: watched (default), laid by hand, or redrawn in two yarns'],
  'end-needles': ['SETTING', 'end-needle selection: on or off (default)'],
  begins: ['HOW', 'usual (default: open where a hem folds, else closed), closed, open on waste yarn, or picked-up'],
  ends: ['HOW', 'cast-off (default), waste-yarn or on-a-thread'],
  machine: ['WORDS', 'what the machine can do, such as by-hand,carriage-side,no-weights; see below'],
  piece: ['NAME', 'the piece of the project; the first if left out; “NAME (2)”: the second of two of a name'],
  size: ['NAME', 'the size of the project; the first, which is the smallest, if left out'],
  'all-pieces': [null, 'all pieces of the project, with their placement sheets in one file'],
  colourway: ['NAME', 'the colourway to knit it in; the one the project is knitted in, if left out'],
  'all-sizes': [null, 'all sizes of the project, each in files of its own'],
  to: ['DIR', 'the folder to write into; made if need be'],
  replace: [null, 'replace files of these names that are there; without it they stay, and are listed'],
  date: ['YYYY-MM-DD', 'the date on the sheet and in the files; SOURCE_DATE_EPOCH or today if left out'],
  unit: ['UNIT', 'what lengths are told in for people and on the sheet: cm (default) or in, with yd and oz'],
  paper: ['SIZE', 'size of the placement sheet: a4 (default) or letter'],
  charts: ['WHICH', 'charts on the sheet, as on the needles and as worn: both (default), needles or worn'],
  corners: [
    'X,Y,X,Y,…',
    'corners of the chart, in pixels: top left, top right, bottom right, bottom left; found if left out',
  ],
  turn: ['DEGREES', 'turns the chart clockwise as it is read, where the photo shows it lying: 90, 180 or 270'],
  columns: ['N', 'columns of the chart; counted if left out'],
  overlap: [
    'SIDE:N',
    'where a second photo goes on and how many rows or columns both show, such as above:6; found if left out',
  ],
  ink: [null, 'two levels: ink on paper, or holes in a card'],
  symbols: [null, 'a symbol for each yarn, drawn in one ink, and empty cells for the ground'],
  figure: ['LEVEL', 'with --ink, which level is the figure: dark (default) or light'],
  colours: ['N', 'how many yarns to sort into, 2 to 16; found if left out'],
  find: ['WORDS', 'a name, a yarn, a size such as 24x20, or “repeat 12”; all of it must fit'],
  collection: ['DIR', 'the folder of the collection; that of the program if left out'],
  motif: ['NAME', 'the motif of the project; the first if left out'],
  'keep-both': [null, 'keep it beside a motif of its name that is kept already'],
  json: [null, 'print one JSON document and nothing else'],
  help: [null, 'this page'],
} as const satisfies Record<string, readonly [takes: string | null, says: string]>;

/** What options mean that differ from one command to another. */
const optionsOf: Partial<
  Record<keyof typeof commands, Partial<Record<keyof typeof options, readonly [takes: string | null, says: string]>>>
> = {
  read: {
    rows: ['N', 'rows of the chart; counted if left out'],
    to: ['FILE', 'the PNG file to write, one pixel for each cell'],
  },
  keep: {
    replace: [null, 'replace the motif of its name that is kept already; without it that stays, and is told'],
  },
  plan: {
    'all-pieces': [null, 'all pieces of the project, behind a table of the yarn that they take together'],
  },
};

const arguments_ = {
  PHOTO:
    'a PNG, JPEG or PBM picture of the chart, 60 million pixels at most; or two that share some of its rows or columns',
  MOTIF:
    'a PNG or PBM picture with one pixel for each cell, or a project, whose first motif is taken; or collection:NAME',
  PROJECT: 'a .walewright file',
  'PROJECT or MOTIF': 'a .walewright file, or a picture with --stitches and --copies',
} as const;

const notes: Partial<Record<keyof typeof commands, readonly string[]>> = {
  measure: [
    'Rows and stitches are counted from 1, also with --json: row 1 at the bottom, stitch 1 at the left.',
    'A slip is a cell that breaks a repeat which all but a few cells keep: its row and stitch, the',
    'colour drawn there, and the colour expected, which most of its copies have. Where as many have one colour as',
    'another, of two copies always, all are listed with none expected: which is right is for you to say.',
    'A step by half is a half drop and a brick at once: the one that cuts the figure least is told first. --json',
    'gives the block of either, where one starts that cuts least, and how many pairs of figure cells it parts.',
  ],
  place: [
    'With --piece or --size a project brings its own piece and placing, as for "plan".',
    'Spaces are named from left to right: margin, gaps, margin. They count all stitches;',
    'the gap across the seam is both margins less the seam allowance.',
  ],
  plan: [
    'A project brings its own pieces and placing: the first piece and the first size, unless --piece and --size',
    'say another; the plan begins with what it is of. Options given here go before them, and',
    'those about placing change its first pattern band, and those about long floats, long carries and anchors all',
    'of its patterns; with --all-pieces they are for every piece.',
    'The machine, one word of each line, with commas between; what is not said stays as the project says it, or as it is first here:',
    '  ahead-seen, ahead-unseen, by-hand: how the needles of a pattern row are chosen',
    '  any-needle, repeat-24-from-L12: where a pattern can stand',
    '  end-needles-switch, end-needles-always, end-needles-none: end-needle selection',
    '  both-edges, carriage-side: where a stitch can be made or taken before a row',
    '  weights, no-weights: whether weights hang on the fabric',
  ],
  follow: [
    'Row n is the row that brings the counter to n; what is done before it is done when the counter reads n − 1.',
    'Where something stands in the way it says what, and gives no order. --json gives the order act by act, and as',
    '“stops” each reading with its row, from the row of --from on; “toSet” is what is set before that row.',
    'A divided neck is not told: plan one piece up to its row and one for each side, and take one side off on waste yarn.',
  ],
  read: [
    'Cells that may be wrong are listed, counted from 1, also with --json: row 1 at the bottom, column 1 at the left.',
    'Corners go where the outermost lines of the chart cross, as the picture is seen upright.',
    'Two photos of one chart are joined by the rows, or columns, that both show: give the corners of the first',
    'and then of the second, all with commas between; --columns and --rows hold for both, or are two numbers.',
    'Where they could meet in several ways, as with a repeat drawn many times over, --overlap says which.',
    'A FILE that is there is replaced if this command read it out of the same PHOTO and nobody has changed it',
    'since; any other with --replace alone. It keeps a list beside it: .walewright-written.json.',
  ],
  export: [
    'If files of these names are there, nothing is written, and they are listed; --replace replaces them. Never',
    'replaced is a file of another kind. With the same --date, or SOURCE_DATE_EPOCH, files come out the same',
    'to the byte. Where there are several pieces or sizes, the names say of which a file is: all go into one folder.',
    'With --all-pieces the placement sheets of a size are one file, each piece with pages and numbers of its own',
    'behind a page of the yarn that all of them take. All files are made before the first is written: what stops',
    'the call before, Ctrl+C too, leaves none.',
  ],
  collection: [
    'collection:NAME stands for a motif of it wherever a MOTIF or a PROJECT is named, such as',
    '“measure collection:star” and “place collection:star --stitches 120 --copies 3,3”; NAME may be that of its file.',
    'Each is a small project file: copy, rename and delete them as you like. What is no motif is listed with the reason.',
  ],
  demo: [
    'Without --to the files go into demo-output. Those of an earlier demo that nobody has changed since are',
    'replaced; others with --replace alone. It keeps a list of them beside them: .walewright-written.json.',
  ],
};

export type CliCommandName = keyof typeof commands;
export type CliOptionName = keyof typeof options;
export type CliArgumentName = keyof typeof arguments_;

export const cli = {
  run: RUN,
  commands,
  options,
  optionsOf,
  arguments: arguments_,
  notes,
  help: {
    title: 'Walewright: colour motifs for a single-bed knitting machine, from the command line.',
    usage: (line: string): string => `Usage: ${RUN} ${line}`,
    commandsTitle: 'Commands',
    optionsTitle: 'Options',
    noteTitle: 'Good to know',
    more: `"${RUN} COMMAND --help" tells more of one. Errors end with exit status 1.`,
  },

  ground: (colour: string, yarn: string | null): string =>
    `The ground is ${yarn === null ? colour : `${yarn}, ${colour}`}.`,

  /** `Row 7, stitch 5 is slate in 3 copies; row 7, stitch 29 is chalk in 1 copy. Proposed: slate.` */
  difference: (versions: readonly Version[], name: (colour: number) => string): string => {
    const each = versions.map(
      ({ colour, copies, first: { column, row } }) =>
        `row ${row + 1}, stitch ${column + 1} is ${name(colour)} in ${n.copies(copies)}`,
    );
    const proposed = proposedOf(versions);
    return `${capitalised(each.join('; '))}. ${proposed ? `Proposed: ${name(proposed.colour)}.` : 'Which is right?'}`;
  },

  place: {
    count: (choices: number): string =>
      choices === 1 ? 'There is one placing.' : `The best ${choices} placings, best first.`,
    columns: {
      choice: 'choice',
      groups: 'groups on needles',
      figure: 'visible spaces',
      blocks: 'spaces between blocks',
      acrossSeam: 'across seam',
      imbalance: 'imbalance',
      fromRule: 'distance from the rule',
    },
    why: (choice: number, sentence: string): string => `${choice}: ${sentence}`,
  },

  collection: {
    folder: (folder: string): string => `In ${folder}:`,
    none: 'No motif.',
    size: (width: number, height: number): string => `${width} × ${height}`,
    columns: { name: 'motif', size: 'size', repeat: 'repeat', yarns: 'yarns', file: 'file' },
  },

  plan: {
    rowsTitle: 'Rows, each below what is done before it',
    strandsTitle: 'Strands of main to cut for wrapping',
    besideTitle: 'Finishing and swatches',
    floats: 'Long floats',
    carries: 'Long carries',
    float: (role: string, longest: number): string => `${role} ${longest}`,
    carry: (stitches: number, toRow: number): string => `${stitches} to row ${toRow}`,
    legend:
      'Carriage at: its side before the row. Needles not named knit main. Long floats and carries are those over the limit, in stitches.',
    findingsTitle: 'To look out for',
    remediesTitle: 'What would help',
    noFindings: 'Nothing.',
  },

  /** Above what is set at the machine, for whoever goes on in the middle of a piece. */
  goingOn: (row: number): string => `To go on with row ${row}`,

  read: {
    written: (file: string, replaced: boolean): string =>
      replaced ? `Written to ${file}, in place of what was read before.` : `Written to ${file}.`,
    colours: (colours: readonly string[]): string => `Yarns, the ground first: ${n.list(colours)}.`,
    /** As the option takes them. */
    corners: (written: string): string => `Its corners: --corners ${written}`,
    settled: (written: string): string => `Put on the lines found near the corners given: --corners ${written}`,
    more: (left: number): string => `… and ${left} more; --json lists all.`,
    joined: (side: JoinSide, shared: number, differing: number): string =>
      `The second photo goes on ${joins.said({ side, shared }, differing)}.`,
  },

  files: {
    /** While files are made. */
    making: (made: number, of: number): string => `${made} of ${n.count(of, 'file')} made`,
    file: (name: string, replaced: boolean): string => (replaced ? `${name} (replaced)` : name),
    written: (count: number, folder: string): string => `${n.count(count, 'file')} exported to ${folder}:`,
  },
};
