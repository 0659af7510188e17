/** Commands of the Piece bench. */
import type { CommandOf } from '@shared/host/index.ts';
import { addSection, canAddSection } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { unless, type Actions, type ActionsOf } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import { allOverActions, type ChosenAllOver } from './all-over/actions.ts';
import { anchorActions, type Spotted } from './anchors/actions.ts';
import { findingActions, type Found } from './findings/actions.ts';
import { groupActions, type Chosen } from './moving/actions.ts';
import { piecesActions } from './pieces/actions.ts';
import { sizeActions } from './sizes/actions.ts';

/** One press of a zoom command. */
const ZOOM_STEP = 1.25;

export type PieceCommand = CommandOf<
  'piece' | 'zoom' | 'anchors' | 'findings' | 'pieces' | 'sizes' | 'groups' | 'all-overs'
>;

/** The bench as its commands see it; the view model is one. */
export interface PieceView extends Chosen, ChosenAllOver, Found, Spotted {
  seenAs: 'flat' | 'closed' | 'purl';
  showsSizes: boolean;
  zoomBy(factor: number): void;
  /** The whole piece, as large as it goes. */
  fit(): void;
}

export function pieceActions(session: Session, viewModel: PieceView): Actions<PieceCommand> {
  return {
    ...showingActions(session, viewModel),
    ...anchorActions(session, viewModel),
    ...findingActions(viewModel, (text) => session.announce(text)),
    ...piecesActions(session),
    ...sizeActions(session, viewModel),
    ...groupActions(session, viewModel),
    ...allOverActions(session, viewModel),
  };
}

function showingActions(session: Session, viewModel: PieceView): ActionsOf<'piece' | 'zoom'> {
  const seeAs = (as: PieceView['seenAs'], said: () => string): void => {
    const isOn = viewModel.seenAs !== as;
    viewModel.seenAs = isOn ? as : 'flat';
    session.announce(isOn ? said() : words.closed.laidOpen);
  };
  /** From outside the tube shows neither strands nor needles. */
  const whyNot = unless(() => viewModel.seenAs !== 'closed', words.whyNot.seamed);
  const whyNotFlat = (): string | null => (viewModel.seenAs === 'purl' ? words.whyNot.onPurlSide : whyNot());
  return {
    floats: {
      whyNot,
      isOn: () => session.view.showsFloats,
      run: () => session.look({ showsFloats: !session.view.showsFloats }),
    },
    wraps: {
      whyNot,
      isOn: () => session.view.showsWraps,
      run: () => session.look({ showsWraps: !session.view.showsWraps }),
    },
    feeders: {
      whyNot,
      isOn: () => session.view.showsFeeders,
      run: () => session.look({ showsFeeders: !session.view.showsFeeders }),
    },
    stitches: {
      whyNot: whyNotFlat,
      isOn: () => session.view.showsStitches,
      run: () => session.look({ showsStitches: !session.view.showsStitches }),
    },
    turn: {
      whyNot: whyNotFlat,
      isOn: () => session.view.pieceShows === 'worn',
      run: () => {
        const pieceShows = session.view.pieceShows === 'worn' ? 'needles' : 'worn';
        session.look({ pieceShows });
        session.announce(words.piece.stage.turned(session.current.piece.finishedFace, pieceShows));
      },
    },
    'add-section': {
      whyNot: unless(() => canAddSection(session.current), words.whyNot.mostSections),
      run: () => {
        const { change, added } = addSection(session.current, words.sections.form.newName);
        session.change(change);
        session.announce(words.sections.form.added(added.name, added.rows));
      },
    },
    'zoom-in': { run: () => viewModel.zoomBy(ZOOM_STEP) },
    'zoom-out': { run: () => viewModel.zoomBy(1 / ZOOM_STEP) },
    'fit-piece': {
      run: () => {
        viewModel.fit();
        session.announce(words.piece.stage.wholeInView);
      },
    },
    closed: {
      isOn: () => viewModel.seenAs === 'closed',
      run: () => {
        const text = words.closed;
        seeAs('closed', () => text.caption(session.current.piece.finishedFace, text.turned(0)));
      },
    },
    'purl-side': {
      isOn: () => viewModel.seenAs === 'purl',
      run: () => seeAs('purl', () => words.shell.part.names.purlSide),
    },
  };
}
