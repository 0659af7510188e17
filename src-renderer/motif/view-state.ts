/** What the Motif bench shows besides the project, and the ways to change it. */
import type { FinishedFace } from '@shared/bed/index.ts';
import type { Cell, Grid, Symmetry } from '@shared/grid/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { Project } from '@shared/project/index.ts';
import type { Viewport } from '../canvas/index.ts';
import type { Cutting, LiftedSelection } from './editing/cutting.ts';
import type { Doubts } from './doubts/doubts.ts';
import type { Following } from './editing/following.ts';
import type { Overhang } from './editing/overhang.ts';
import type { Lettering } from './lettering/lettering.ts';
import type { ToolName } from './tools/index.ts';

export interface LeftOff {
  readonly project: Project;
  readonly overhang: Overhang;
  /** The project was changed by it, so undo brings it back. */
  readonly canUndo: boolean;
}

export interface MotifViewState {
  readonly tool: ToolName;
  /** The corners of the shape that is being drawn, or null. */
  readonly span: { readonly from: Cell; readonly to: Cell } | null;
  /** The selected cells, as they were then, or null. */
  readonly selection: Cutting | null;
  readonly lifted: LiftedSelection | null;
  /** What was left off by the change that led to `project`, because it lay outside the chart. */
  readonly leftOff: LeftOff | null;
  /** What was copied last, for pasting. */
  readonly clipping: Grid | null;
  /** The dialog that is up over the bench, or null; `keep` is the collection, where the motif is kept at once. */
  readonly dialog: 'lettering' | 'collection' | 'keep' | null;
  /** What was set in letters last, to begin from when it is to be put right; null before the first. */
  readonly lettering: Lettering | null;
  /** What the stamp lays; with null, or a motif that cannot be stamped, the first that can. */
  readonly stamp: { readonly motif: MotifId | null; readonly isFigureOnly: boolean };
  readonly isFilled: boolean;
  readonly fillsEverywhere: boolean;
  /** The pen, put on a cell of its own yarn, gives it back to the ground. */
  readonly takesAway: boolean;
  readonly symmetry: Symmetry;
  /** The copy that all others follow, or null. */
  readonly tile: Following['tile'];
  /** Where the keyboard draws. It may lie outside after the motif was made smaller; see {@link MotifView.cursor}. */
  readonly cursor: Cell;
  /** Null: the whole motif, as large as it goes. */
  readonly view: Viewport | null;
  readonly showsNeighbours: boolean;
  /** The side of the fabric that is shown instead of the chart, or null. */
  readonly fabric: FinishedFace | null;
  /** Cells in the proportion of the gauge, or as wide as tall. */
  readonly cellShape: 'knitted' | 'square';
  /** The list of cells to settle has the keyboard, and the cell cursor is on one of them. */
  readonly isSettling: boolean;
  /** What readings were not sure of; null before the first. */
  readonly doubts: Doubts | null;
}

/** What the stage can show. */
export const SHOWINGS = ['chart', 'knit', 'purl'] as const;

/** What the stage does for commands; it alone knows its size. */
export interface StageControls {
  zoomBy(factor: number): void;
  /** Gives the keyboard to the chart. */
  focus(): void;
  /** Puts the cell cursor on a cell and brings it into view, the keyboard with it. */
  goTo(cell: Cell): void;
  /** The same with the keyboard left where it is. */
  show(cell: Cell): void;
}

/** As the window opens. */
export const START: MotifViewState = {
  tool: 'draw',
  span: null,
  selection: null,
  lifted: null,
  leftOff: null,
  clipping: null,
  dialog: null,
  lettering: null,
  stamp: { motif: null, isFigureOnly: true },
  isFilled: false,
  fillsEverywhere: false,
  takesAway: false,
  symmetry: 'none',
  tile: null,
  cursor: { column: 0, row: 0 },
  view: null,
  showsNeighbours: true,
  fabric: null,
  cellShape: 'knitted',
  isSettling: false,
  doubts: null,
};

/** The bench as its commands and gestures see it; the view model is one. */
export interface MotifView {
  readonly state: MotifViewState;
  /** The cell cursor, on the motif. */
  readonly cursor: Cell;
  /** Palette index of the yarn in the pen. */
  readonly colour: number;
  /** How many times as wide as tall cells are shown. */
  readonly aspect: number;
  look(to: Partial<MotifViewState>): void;
  zoomBy(factor: number): void;
  /** Puts the cell cursor on a cell and brings it into view, where a stage shows it. */
  goTo(cell: Cell): void;
  /** The same with the keyboard left where it is. */
  show(cell: Cell): void;
  focusStage(): void;
  /** Asks the person for a picture file; null for none. */
  choosePicture(): Promise<PictureFile | null>;
}

export interface PictureFile {
  readonly name: string;
  /** To be handed over, once. */
  readonly bytes: Uint8Array<ArrayBuffer>;
}
