/** The tool controller: turns where the pointer goes, and what the keys ask for, into changes of the project. */
import { applyPatch, cellAt, type Cell, type Copies, type Grid } from '@shared/grid/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../../session/session.ts';
import type { MotifView } from '../view-state.ts';
import { cellOnMotif } from '../editing/following.ts';
import { cutBox, holds, layChange, type Cutting } from '../editing/cutting.ts';
import { giveUpAll, layLifted, moveLifted, select } from '../lifted-selection.ts';
import { cellsThrough, type PaintChange } from '../editing/strokes.ts';
import { layStamp, moveStamp, pressStamp, type Press } from '../stamping.ts';
import { stepOfArrow } from './cursor-keys.ts';
import { dragHeld, isSame, putHeld } from './held-cells.ts';
import { TOOLS, type Drawing, type Tool } from '../tools/index.ts';

let gestures = 0;
/** A mark for changes that make one step of undo. */
export const newGesture = (): string => `tool-${gestures++}`;

/** True for tools that work between two corners. */
const spans = ({ kind }: Tool): boolean => kind === 'span' || kind === 'select';

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
  /** The copies around the chart that the stroke or the shape began in, or null. */
  #around: Copies | null = null;

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
      following: { symmetry, tile, around: this.#around },
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

  /** True for tools that draw, or take a yarn, in the copies around the chart as well. */
  get reachesCopies(): boolean {
    return this.canDrawGround || TOOLS[this.viewModel.state.tool].kind === 'pick';
  }

  /**
   * The pointer goes down on a cell; all it does until it is let go is one step
   * of undo. `withGround`: it draws the ground. `around`: how the copies lie
   * around the chart, if it goes down in one of them.
   */
  press(cell: Cell, withGround = false, around: Copies | null = null): Press {
    const tool = TOOLS[this.viewModel.state.tool];
    // The second corner of a shape may be pressed anywhere.
    if (tool.kind !== 'span' || !this.viewModel.state.span) this.#around = around;
    this.#drawsGround = withGround || this.#takesAway(cell);
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
      const drawing = this.#drawing;
      const change = tool.kind === 'stroke' ? tool.change(drawing, cells) : tool.change(drawing, last);
      if (change) this.session.change(change, gesture);
    }
  }

  /** The keyboard uses the tool at its cursor; true if what was done has been said. */
  useAt(cell: Cell): boolean {
    if (!this.viewModel.state.span) this.#around = null;
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
    if (held && holds(held, cell)) {
      return dragHeld(this.session, this.viewModel, { from: cell, held, grip }, () => {
        this.#grip = { cell, of: held };
        this.say(words.motif.select.takenHold(cell.column, cell.row));
      });
    }
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
        putHeld(this.session, this.viewModel, held, grip, cell);
        return cell;
      },
      giveUp: () => {
        if (begun) begun.giveUp();
        else this.#grip = { cell: grip, of: held };
      },
    };
  }

  /** The pen was put on a cell of its own yarn, and that takes cells away. */
  #takesAway(cell: Cell): boolean {
    const { state, colour } = this.viewModel;
    return state.takesAway && state.tool === 'draw' && this.#colourAt(cell) === colour;
  }

  /** The yarn of a cell of the chart, or of one in a copy around it that can be drawn in; null elsewhere. */
  #colourAt(cell: Cell): number | null {
    const { motif, following } = this.#drawing;
    const own = cellOnMotif(motif.grid, cell, following);
    return own && cellAt(motif.grid, own.column, own.row);
  }

  #pick(cell: Cell): void {
    const { project } = this.session;
    const colour = this.#colourAt(cell);
    if (colour === null) return;
    this.session.look({ colour });
    this.say(words.motif.yarnTaken(project.yarns[colour]?.name ?? ''));
  }
}
