/**
 * The hand that holds the tool: turns where the pointer goes, and what the keys
 * ask for, into changes of the project.
 */
import { applyPatch, cellAt, isInside, type Cell, type Grid } from '@shared/grid/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../../shell/session.ts';
import type { MotifDesk } from '../desk.ts';
import { cellsThrough, type PaintChange } from '../editing/strokes.ts';
import { TOOLS, type Drawing } from '../tools/index.ts';

/** A press of the pointer, until it is let go. */
export interface Press {
  /** The pointer went on over these cells. */
  over(cells: readonly Cell[]): void;
  /** Let go; gives the last cell. */
  end(): Cell;
}

let gestures = 0;
/** A mark for changes that make one step of undo. */
export const newGesture = (): string => `hand-${gestures++}`;

export class Hand {
  constructor(
    private readonly session: Session,
    private readonly desk: MotifDesk,
    private readonly say: (text: string) => void,
  ) {}

  get #drawing(): Drawing {
    const { symmetry, tile, isFilled, fillsEverywhere } = this.desk.state;
    return {
      motif: this.session.motif,
      colour: this.desk.colour,
      following: { symmetry, tile },
      isFilled,
      fillsEverywhere,
    };
  }

  /** The drawing with the shape that is being drawn, as it would be laid. */
  get shown(): Grid {
    const { grid } = this.session.motif;
    const change = this.#spanChange();
    return change ? applyPatch(grid, change.patch) : grid;
  }

  /** True for tools that draw along while Shift is held. */
  get drawsAlong(): boolean {
    return TOOLS[this.desk.state.tool].kind === 'stroke';
  }

  /** The pointer goes down on a cell; all it does until it is let go is one step of undo. */
  press(cell: Cell): Press {
    const tool = TOOLS[this.desk.state.tool];
    const gesture = newGesture();
    let last = cell;
    if (tool.kind === 'span') this.desk.look({ span: { from: cell, to: cell } });
    else this.use([cell], gesture);
    return {
      over: (cells) => {
        if (tool.kind === 'span') this.stretch(cells.at(-1) ?? last);
        else if (tool.kind === 'stroke') this.use(cellsThrough(last, cells), gesture);
        last = cells.at(-1) ?? last;
      },
      end: () => {
        if (tool.kind === 'span') this.lay();
        return last;
      },
    };
  }

  /** Uses a tool that needs no second corner on cells that follow each other. */
  use(cells: readonly Cell[], gesture: string): void {
    const tool = TOOLS[this.desk.state.tool];
    const last = cells.at(-1);
    if (!last) return;
    if (tool.kind === 'pick') this.#pick(last);
    else if (tool.kind !== 'span') {
      const change = tool.kind === 'stroke' ? tool.change(this.#drawing, cells) : tool.change(this.#drawing, last);
      if (change) this.session.change(change, gesture);
    }
  }

  /** The keyboard uses the tool at its cursor; true if what was done has been said. */
  useAt(cell: Cell): boolean {
    const { tool, span } = this.desk.state;
    if (TOOLS[tool].kind === 'span') {
      if (span) this.lay();
      else {
        this.desk.look({ span: { from: cell, to: cell } });
        this.say(words.motif.shapes.begun(words.motif.tools[tool], cell.column, cell.row));
      }
      return true;
    }
    this.use([cell], newGesture());
    return TOOLS[tool].kind === 'pick';
  }

  /** The second corner of a shape goes to another cell; nothing if none is being drawn. */
  stretch(to: Cell): void {
    const { span } = this.desk.state;
    if (span) this.desk.look({ span: { from: span.from, to } });
  }

  /** Lays the shape that is being drawn. */
  lay(): void {
    const { tool, span } = this.desk.state;
    if (!span) return;
    const change = this.#spanChange();
    this.desk.look({ span: null });
    if (change) this.session.change(change);
    this.say(words.motif.shapes.laid(words.motif.tools[tool]));
  }

  /** Gives up the shape that is being drawn; false if there is none. */
  giveUp(): boolean {
    if (!this.desk.state.span) return false;
    this.desk.look({ span: null });
    this.say(words.motif.shapes.givenUp);
    return true;
  }

  #spanChange(): PaintChange | null {
    const { tool: name, span } = this.desk.state;
    const tool = TOOLS[name];
    return span && tool.kind === 'span' ? tool.change(this.#drawing, span.from, span.to) : null;
  }

  #pick({ column, row }: Cell): void {
    const { motif, project } = this.session;
    if (!isInside(motif.grid, column, row)) return;
    const colour = cellAt(motif.grid, column, row);
    this.session.look({ colour });
    this.say(words.motif.yarnTaken(project.yarns[colour]?.name ?? ''));
  }
}
