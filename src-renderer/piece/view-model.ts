/** The view model of the Piece bench, what it shows besides the project: the view, the stitch looked at, the band in the form. */
import type { Gathered } from '@shared/check/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { commandsOf, type Commands } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import { liveFields, type LiveFields } from '../ui/live.ts';
import { PanelMemory } from '../ui/panel-memory.ts';
import type { Viewport } from '../canvas/index.ts';
import { pieceActions, type PieceCommand, type PieceView } from './actions.ts';
import type { GroupSpot } from './moving/actions.ts';
import type { Reading } from './moving/reading.ts';
import type { StitchSpot } from './stitch-spot.ts';

/** What the stage does for commands; it alone knows its size. */
export interface StageControls {
  zoomBy(factor: number): void;
  fit(): void;
}

/** The piece laid flat as a chart, joined into its tube, or from its purl side with the strands as they lie. */
export type SeenAs = 'flat' | 'closed' | 'purl';

/** A finding that was gone to; `times` tells going to it once more from staying. */
interface AskedFinding {
  readonly kind: string;
  readonly times: number;
}

/** What the bench shows, as it begins and when another piece is looked at. */
interface Shown {
  /** Null: the whole piece, as large as it goes. */
  readonly view: Viewport | null;
  /** The stitch under the keyboard's cursor. */
  readonly spot: StitchSpot | null;
  /** Number of the band whose groups the form describes. */
  readonly band: number;
  /** Number of the all-over in the form; it may be gone. */
  readonly allOver: number;
  /** It has just come, and the panel has not yet brought it into view. */
  readonly isAllOverNew: boolean;
  /** The group that the commands move; choosing it brings its band into the form. */
  readonly group: GroupSpot | null;
  /** A group that is in the hand, as it would stand. */
  readonly dragged: Reading | null;
  readonly seenAs: SeenAs;
  /** What was found, as the panel has it; null as long as it is not known. */
  readonly findings: readonly Gathered[] | null;
  /** The one that is shown on the drawing; it may be gone. */
  readonly asked: AskedFinding | null;
  /** The joins of the parts that a piece too wide for the bed could be knitted in are drawn. */
  readonly showsParts: boolean;
}

const START: Shown = {
  view: null,
  spot: null,
  band: 0,
  allOver: 0,
  isAllOverNew: false,
  group: null,
  dragged: null,
  seenAs: 'flat',
  findings: null,
  asked: null,
  showsParts: false,
};

export class PieceViewModel implements PieceView {
  readonly commands: Commands<PieceCommand>;
  readonly #shown: LiveFields<Shown & { readonly showsSizes: boolean; readonly showsFindings: boolean }>;
  readonly panel: PanelMemory;
  #stage: StageControls | null = null;
  /** The finding that the keyboard went to last; it does not go there again by itself. */
  answered: AskedFinding | null = null;

  constructor(private readonly session: Session) {
    this.panel = new PanelMemory(session.live);
    this.#shown = liveFields({ ...START, showsSizes: false, showsFindings: false }, session.live);
    let looked = lookedAt(session);
    session.subscribe(() => {
      const now = lookedAt(session);
      if (now !== looked) this.#shown.set(START);
      looked = now;
    });
    this.commands = commandsOf(pieceActions(session, this));
  }

  get view(): Viewport | null {
    return this.#shown.now.view;
  }

  set view(view: Viewport | null) {
    this.#shown.set({ view });
  }

  get spot(): StitchSpot | null {
    return this.#shown.now.spot;
  }

  set spot(spot: StitchSpot | null) {
    this.#shown.set({ spot });
  }

  /** The last one, where undo has taken away the one that was chosen; 0 where there is none. */
  get band(): number {
    return Math.max(0, Math.min(this.#shown.now.band, bandsOf(this.session.current).length - 1));
  }

  set band(band: number) {
    this.#shown.set({ band, group: null });
  }

  get allOver(): number {
    return this.#shown.now.allOver;
  }

  set allOver(allOver: number) {
    this.#shown.set({ allOver });
  }

  get isAllOverNew(): boolean {
    return this.#shown.now.isAllOverNew;
  }

  set isAllOverNew(isAllOverNew: boolean) {
    this.#shown.set({ isAllOverNew });
  }

  get group(): GroupSpot | null {
    return this.#shown.now.group;
  }

  set group(group: GroupSpot | null) {
    this.#shown.set(group ? { group, band: group.band } : { group });
  }

  get dragged(): Reading | null {
    return this.#shown.now.dragged;
  }

  set dragged(dragged: Reading | null) {
    this.#shown.set({ dragged });
  }

  get seenAs(): SeenAs {
    return this.#shown.now.seenAs;
  }

  set seenAs(seenAs: SeenAs) {
    this.#shown.set({ seenAs });
  }

  /** It is looked at joined into its tube. */
  get isClosed(): boolean {
    return this.seenAs === 'closed';
  }

  get findings(): readonly Gathered[] | null {
    return this.#shown.now.findings;
  }

  set findings(findings: readonly Gathered[] | null) {
    this.#shown.set({ findings });
  }

  /** The finding that is gone to now; another value each time. */
  get asked(): AskedFinding | null {
    return this.#shown.now.asked;
  }

  /** The finding that the drawing shows. */
  get finding(): Gathered | null {
    const { findings, asked } = this.#shown.now;
    return findings?.find(({ kind }) => kind === asked?.kind) ?? null;
  }

  /** Its card gets the keyboard, and the drawing shows where it is; null: none is shown any more. */
  lookAtFinding(finding: Gathered | null): void {
    const times = (this.#shown.now.asked?.times ?? 0) + 1;
    this.#shown.set({ asked: finding && { kind: finding.kind, times } });
    if (finding) this.#showFindings();
  }

  /** The panel tells what was found, in place of its forms. */
  get showsFindings(): boolean {
    return this.#shown.now.showsFindings;
  }

  /** Who opens it is led to none of them yet. */
  set showsFindings(showsFindings: boolean) {
    if (!showsFindings) {
      this.#shown.set({ showsFindings });
      return;
    }
    this.lookAtFinding(null);
    this.#showFindings();
  }

  #showFindings(): void {
    this.#shown.set({ showsFindings: true });
    // From the first, however far the forms are scrolled.
    if (this.panel.scrolledIn(this.panelShows) === null) this.panel.keepScroll(this.panelShows, 0);
    this.panel.show();
  }

  /** Names what the panel shows, for it to be scrolled as it was. */
  get panelShows(): string {
    const looked = lookedAt(this.session);
    return this.showsFindings ? `${looked} findings` : looked;
  }

  get showsParts(): boolean {
    return this.#shown.now.showsParts;
  }

  set showsParts(showsParts: boolean) {
    this.#shown.set({ showsParts });
  }

  /** The table of sizes is up over the bench. */
  get showsSizes(): boolean {
    return this.#shown.now.showsSizes;
  }

  set showsSizes(showsSizes: boolean) {
    this.#shown.set({ showsSizes });
  }

  /** The stage comes and goes with the bench. */
  attach(stage: StageControls): () => void {
    this.#stage = stage;
    return () => {
      if (this.#stage === stage) this.#stage = null;
    };
  }

  zoomBy(factor: number): void {
    this.#stage?.zoomBy(factor);
  }

  fit(): void {
    this.#stage?.fit();
  }
}

/** Names the project on the table and the piece of it that is looked at; its sizes are looked at in the same way. */
export function lookedAt({ opened, current }: Session): string {
  return `${opened} ${current.at.piece}`;
}
