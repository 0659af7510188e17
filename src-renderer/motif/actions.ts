/** Commands of the Motif bench. */
import type { CommandOf } from '@shared/host/index.ts';
import { words } from '@shared/words/index.ts';
import { actionsFor, unless, type Actions, type ActionsOf } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import { SHOWINGS, type MotifView } from './view-state.ts';
import { addYarnChange } from './editing/palette.ts';
import { nextSymmetry, tileToFollow } from './editing/following.ts';
import { measuredFor } from './measured.ts';
import { wholeActions } from './whole-actions.ts';
import { layLifted } from './lifted-selection.ts';
import { motifsActions } from './motifs-actions.ts';
import { selectActions } from './select-actions.ts';
import { stampActions } from './stamp-actions.ts';
import { holdStamp, stampable } from './stamping.ts';
import { slipActions } from './slip-actions.ts';
import { doubtActions } from './doubts/doubt-actions.ts';
import { TOOL_NAMES } from './tools/index.ts';
import { noUnderlayYet, underlayActions } from './underlay/actions.ts';
import { addYarn, takeYarn } from './yarns.ts';

/** One press of a zoom command. */
const ZOOM_STEP = 1.25;

export type MotifCommand = CommandOf<
  'tools' | 'drawing' | 'selection' | 'whole' | 'motifs' | 'stamp' | 'doubts' | 'slips' | 'underlay' | 'zoom' | 'chart'
>;

export function motifActions(session: Session, viewModel: MotifView): Actions<MotifCommand> {
  return {
    ...toolActions(session, viewModel),
    ...drawingActions(session, viewModel),
    ...selectActions(session, viewModel),
    ...wholeActions(session, viewModel),
    ...motifsActions(session, viewModel),
    ...stampActions(session, viewModel),
    ...doubtActions(session, viewModel),
    ...slipActions(session, viewModel),
    ...underlayActions(session, viewModel),
    ...chartActions(session, viewModel),
  };
}

function toolActions(session: Session, viewModel: MotifView): ActionsOf<'tools'> {
  return actionsFor(
    TOOL_NAMES,
    (tool) => `tool-${tool}` as const,
    (tool) => ({
      whyNot: unless(() => tool !== 'stamp' || stampable(session).length > 0, words.whyNot.nothingToStamp),
      isOn: () => viewModel.state.tool === tool,
      run: () => {
        layLifted(session, viewModel);
        viewModel.look({ tool, span: null, selection: null });
        if (tool === 'stamp') holdStamp(session, viewModel, viewModel.cursor);
        const isBare = tool === 'trace' && !session.motif.underlay;
        session.announce(isBare ? noUnderlayYet() : words.commands[`tool-${tool}`]);
      },
    }),
  );
}

function drawingActions(session: Session, viewModel: MotifView): ActionsOf<'drawing'> {
  return {
    'filled-shapes': {
      isOn: () => viewModel.state.isFilled,
      run: () => viewModel.look({ isFilled: !viewModel.state.isFilled }),
    },
    'fill-everywhere': {
      isOn: () => viewModel.state.fillsEverywhere,
      run: () => viewModel.look({ fillsEverywhere: !viewModel.state.fillsEverywhere }),
    },
    'takes-away': {
      isOn: () => viewModel.state.takesAway,
      run: () => viewModel.look({ takesAway: !viewModel.state.takesAway }),
    },
    'symmetry-next': {
      run: () => {
        const symmetry = nextSymmetry(viewModel.state.symmetry);
        viewModel.look({ symmetry });
        session.announce(words.motif.drawing.symmetryAnnounced[symmetry]);
      },
    },
    'copies-follow': {
      isOn: () => viewModel.state.tile !== null,
      run: async () => {
        const { grid } = session.motif;
        const drawing = { grid, ground: session.project.mainYarn };
        const measured = viewModel.state.tile ? null : await measuredFor(session, drawing);
        if (session.motif.grid === grid) viewModel.look({ tile: measured && tileToFollow(measured) });
      },
    },
    lettering: { run: () => viewModel.look({ dialog: 'lettering' }) },
    'yarn-next': { run: () => takeYarn(session, viewModel, 1) },
    'yarn-before': { run: () => takeYarn(session, viewModel, -1) },
    'yarn-add': {
      whyNot: unless(() => addYarnChange(session.project, '') !== null, words.whyNot.mostYarns),
      run: () => addYarn(session),
    },
  };
}

function chartActions(session: Session, viewModel: MotifView): ActionsOf<'zoom' | 'chart'> {
  return {
    'zoom-in': { run: () => viewModel.zoomBy(ZOOM_STEP) },
    'zoom-out': { run: () => viewModel.zoomBy(1 / ZOOM_STEP) },
    'fit-motif': {
      run: () => {
        viewModel.look({ view: null });
        session.announce(words.motif.wholeInView);
      },
    },
    neighbours: {
      isOn: () => viewModel.state.showsNeighbours,
      run: () => viewModel.look({ showsNeighbours: !viewModel.state.showsNeighbours }),
    },
    'fabric-next': {
      run: () => {
        const at = SHOWINGS.indexOf(viewModel.state.fabric ?? 'chart');
        const next = SHOWINGS[(at + 1) % SHOWINGS.length] ?? 'chart';
        viewModel.look({ fabric: next === 'chart' ? null : next });
        session.announce(words.motif.drawing.showings[next]);
      },
    },
    'square-cells': {
      isOn: () => viewModel.state.cellShape === 'square',
      run: () => viewModel.look({ cellShape: viewModel.state.cellShape === 'square' ? 'knitted' : 'square' }),
    },
  };
}
