/** The tool controller: turns where the pointer goes, and what the keys ask for, into changes of the project. */
import { applyPatch, cellAt, isInside, type Cell, type Grid } from '@shared/grid/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../../session/session.ts';
import type { MotifView } from '../view-state.ts';
import { cutBox, holds, layChange, type Cutting } from '../editing/cutting.ts';
import { giveUpAll, layLifted, lift, moveLifted, moveTo, select } from '../lifted-selection.ts';
import { cellsThrough, type PaintChange } from '../editing/strokes.ts';
import { layStamp, moveStamp, pressStamp, type Press } from '../stamping.ts';
import { stepOfArrow } from './cursor-keys.ts';
import { TOOLS, type Drawing, type Tool } from '../tools/index.ts';

let gestures = 0;
/** A mark for changes that make one step of undo. */
export const newGesture = (): string => `tool-${gestures++}`;

/** True for tools that work between two corners. */
const spans = ({ kind }: Tool): boolean => kind === 'span' || kind === 'select';

const isSame = (a: Cell, b: Cell): boolean => a.column === b.column && a.row === b.row;

/**
 * What is dragged can be pressed too: one corner of a shape and then the other,
 * a cell of what is selected and then where that cell goes. A drag always
 * begins anew, whatever was pressed before it.
 */
export class ToolController {
  /** The first corner of the shape that was begun by a press. */
  #begun: Cell | null = null;
  /** The cell that was selected alone by a press, and what was selected then. */
  #corner: { readonly cell: Cell; readonly of: Cutting | null } | null = null;
  /** The cell that was pressed to go where the chart is pressed next, and what it belongs to. */
  #grip: { readonly cell: Cell; readonly of: Cutting } | null = null;

  /** The press that went on last draws the ground, whatever yarn is in the pen. */
  #drawsGround = false;

  constructor(
    private readonly session: Session,
    private readonly viewModel: MotifView,
    private readonly say: (text: string) => void,
  ) {}

  get #drawing(): Drawing {
    const { symmetry, tile, isFilled, fillsEverywhere } = this.viewModel.state;
    return {
      motif: this.session.motif,
      colour: this.#drawsGround ? this.session.project.mainYarn : this.viewModel.colour,
      ground: this.session.project.mainYarn,
      following: { symmetry, tile },
      isFilled,
      fillsEverywhere,
    };
  }

  /** The drawing with the shape that is being drawn, as it would be laid. */
  get shown(): Grid {
    const { motif, project } = this.session;
    const { lifted } = this.viewModel.state;
    const change = lifted ? layChange(motif, project.mainYarn, lifted) : this.#spanChange();
    return change ? applyPatch(motif.grid, change.edits[0].patch) : motif.grid;
  }

  /** The cells that are selected, being selected, or lifted. */
  get marked(): Cutting | null {
    const { lifted, selection, span, tool } = this.viewModel.state;
    if (lifted) return lifted;
    return span && TOOLS[tool].kind === 'select' ? cutBox(this.session.motif.grid, span.from, span.to) : selection;
  }

  /** True where cells are selected or lifted, and no tool draws along with Shift. */
  get isHolding(): boolean {
    const { selection, lifted } = this.viewModel.state;
    return !this.drawsAlong && (selection ?? lifted) !== null;
  }

  /** True for tools that draw along while Shift is held. */
  get drawsAlong(): boolean {
    return TOOLS[this.viewModel.state.tool].kind === 'stroke';
  }

  /** The pointer came to another cell; a shape that was begun by a press follows it. */
  hover(cell: Cell): void {
    moveStamp(this.session, this.viewModel, cell);
    if (this.#begun !== null && this.viewModel.state.span?.from === this.#begun) this.stretch(cell);
  }

  /** True for tools that draw the ground with the right button, or the eraser of a pen. */
  get canDrawGround(): boolean {
    return ['stroke', 'span', 'spot'].includes(TOOLS[this.viewModel.state.tool].kind);
  }

  /** The pointer goes down on a cell; all it does until it is let go is one step of undo. `withGround`: it draws the ground. */
  press(cell: Cell, withGround = false): Press {
    this.#drawsGround = withGround || this.#takesAway(cell);
    const tool = TOOLS[this.viewModel.state.tool];
    if (tool.kind === 'stamp') return pressStamp(this.session, this.viewModel, cell);
    if (tool.kind === 'select') return this.#pressSelect(cell);
    if (tool.kind === 'span') return this.#pressCorner(cell, this.viewModel.state.span?.from ?? null);
    const gesture = newGesture();
    let last = cell;
    this.use([cell], gesture);
    return {
      over: (cells) => {
        if (tool.kind === 'stroke') this.use(cellsThrough(last, cells), gesture);
        last = cells.at(-1) ?? last;
      },
      end: () => last,
      giveUp: () => this.session.giveUp(gesture),
    };
  }

  /** Uses a tool that needs no second corner on cells that follow each other. */
  use(cells: readonly Cell[], gesture: string): void {
    const last = cells.at(-1);
    if (!last) return;
    const chosen = TOOLS[this.viewModel.state.tool];
    const tool = this.#drawsGround && chosen.kind === 'stroke' ? TOOLS.erase : chosen;
    if (tool.kind === 'pick') this.#pick(last);
    else if (tool.kind === 'stroke' || tool.kind === 'spot') {
      const change = tool.kind === 'stroke' ? tool.change(this.#drawing, cells) : tool.change(this.#drawing, last);
      if (change) this.session.change(change, gesture);
    }
  }

  /** The keyboard uses the tool at its cursor; true if what was done has been said. */
  useAt(cell: Cell): boolean {
    this.#drawsGround = this.#takesAway(cell);
    if (this.viewModel.state.tool === 'stamp') {
      layStamp(this.session, this.viewModel);
      return true;
    }
    if (layLifted(this.session, this.viewModel)) return true;
    const { tool, span } = this.viewModel.state;
    if (spans(TOOLS[tool])) {
      if (span) this.lay();
      else {
        this.viewModel.look({ span: { from: cell, to: cell } });
        this.say(words.motif.shapes.begun(words.motif.tools[tool], cell.column, cell.row));
      }
      return true;
    }
    this.use([cell], newGesture());
    return TOOLS[tool].kind === 'pick';
  }

  /** The second corner of a shape goes to another cell; nothing if none is being drawn. */
  stretch(to: Cell): void {
    const { span } = this.viewModel.state;
    if (span) this.viewModel.look({ span: { from: span.from, to } });
  }

  /** Lays the shape that is being drawn. */
  lay(): void {
    const { tool, span } = this.viewModel.state;
    if (!span) return;
    const change = this.#spanChange();
    this.viewModel.look({ span: null });
    if (TOOLS[tool].kind === 'select') {
      select(this.session, this.viewModel, cutBox(this.session.motif.grid, span.from, span.to));
      return;
    }
    if (change) this.session.change(change);
    this.say(words.motif.shapes.laid(words.motif.tools[tool]));
  }

  /** An arrow key moves what is lifted; false if nothing is. */
  moveByKey(key: string): boolean {
    if (!this.viewModel.state.lifted) return false;
    const [columns, rows] = stepOfArrow(key);
    this.say(moveLifted(this.viewModel, columns, rows));
    return true;
  }

  /** Gives up what is lifted, is selected, or is being drawn; false if there is nothing. */
  giveUp(): boolean {
    return giveUpAll(this.session, this.viewModel);
  }

  #spanChange(): PaintChange | null {
    const { tool: name, span } = this.viewModel.state;
    const tool = TOOLS[name];
    return span && tool.kind === 'span' ? tool.change(this.#drawing, span.from, span.to) : null;
  }

  /** A press with a tool that works between two corners; `first`: the one that was set before. */
  #pressCorner(cell: Cell, first: Cell | null): Press {
    const before = this.viewModel.state.span;
    let last = cell;
    let isDrag = false;
    this.viewModel.look({ span: { from: first ?? cell, to: cell } });
    return {
      over: (cells) => {
        last = cells.at(-1) ?? last;
        isDrag ||= !isSame(last, cell);
        // Escape may have given it up.
        if (isDrag && this.viewModel.state.span) this.viewModel.look({ span: { from: cell, to: last } });
      },
      end: () => {
        const { tool, span } = this.viewModel.state;
        if (!span) return last;
        const isSelecting = TOOLS[tool].kind === 'select';
        if (isDrag || first !== null || isSelecting) this.lay();
        else {
          this.#begun = cell;
          this.viewModel.look({ span: { from: cell, to: cell } });
          this.say(words.motif.shapes.begunByPress(words.motif.tools[tool], cell.column, cell.row));
        }
        const isAlone = isSelecting && !isDrag && first === null;
        this.#corner = isAlone ? { cell, of: this.viewModel.state.selection } : null;
        return last;
      },
      giveUp: () => this.viewModel.look({ span: before }),
    };
  }

  /** A press with Select: on what is lifted or selected it takes hold; elsewhere it lays down what is lifted. */
  #pressSelect(cell: Cell): Press {
    const { lifted, selection, span } = this.viewModel.state;
    const held = lifted ?? selection;
    const grip = this.#grip && this.#grip.of === held ? this.#grip.cell : null;
    this.#grip = null;
    if (held && holds(held, cell)) return this.#drag(cell, held, grip);
    const begin = (): Press => {
      const corner = this.#corner && this.#corner.of === selection && selection ? this.#corner.cell : null;
      layLifted(this.session, this.viewModel);
      this.viewModel.look({ selection: null });
      return this.#pressCorner(cell, span?.from ?? corner);
    };
    if (held === null || grip === null) return begin();
    // It goes where it is let go; a drag means something else.
    let begun: Press | null = null;
    return {
      over: (cells) => {
        if (cells.every((each) => isSame(each, cell))) return;
        begun ??= begin();
        begun.over(cells);
      },
      end: () => {
        if (begun) return begun.end();
        this.#put(held, grip, cell);
        return cell;
      },
      giveUp: () => {
        if (begun) begun.giveUp();
        else this.#grip = { cell: grip, of: held };
      },
    };
  }

  /** The pointer drags what is lifted; what is selected is lifted by the first move. A mere press takes hold, or puts it. */
  #drag(from: Cell, held: Cutting, grip: Cell | null): Press {
    let last = from;
    let isDrag = false;
    return {
      over: (cells) => {
        const to = cells.at(-1) ?? last;
        if (isSame(to, last)) return;
        isDrag = true;
        if (this.viewModel.state.selection) lift(this.session, this.viewModel);
        moveLifted(this.viewModel, to.column - last.column, to.row - last.row);
        last = to;
      },
      end: () => {
        if (grip) {
          if (!isDrag) this.#put(held, grip, from);
        } else if (!isDrag) {
          this.#grip = { cell: from, of: held };
          this.say(words.motif.select.takenHold(from.column, from.row));
        }
        return last;
      },
      giveUp: () => moveLifted(this.viewModel, from.column - last.column, from.row - last.row),
    };
  }

  /** Moves what is held so that its cell `grip` comes to another one. */
  #put(held: Cutting, grip: Cell, to: Cell): void {
    moveTo(this.session, this.viewModel, {
      column: held.at.column + to.column - grip.column,
      row: held.at.row + to.row - grip.row,
    });
  }

  /** The pen was put on a cell of its own yarn, and that takes cells away. */
  #takesAway({ column, row }: Cell): boolean {
    const { state, colour } = this.viewModel;
    const { grid } = this.session.motif;
    const mayTake = state.takesAway && state.tool === 'draw' && isInside(grid, column, row);
    return mayTake && cellAt(grid, column, row) === colour;
  }

  #pick({ column, row }: Cell): void {
    const { motif, project } = this.session;
    if (!isInside(motif.grid, column, row)) return;
    const colour = cellAt(motif.grid, column, row);
    this.session.look({ colour });
    this.say(words.motif.yarnTaken(project.yarns[colour]?.name ?? ''));
  }
}
