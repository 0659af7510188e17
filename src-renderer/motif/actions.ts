/** Commands of the Motif bench, with their shortcuts. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../commands/action.ts';
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
import { TOOL_NAMES, TOOLS } from './tools/index.ts';
import { underlayActions } from './underlay/actions.ts';

/** One press of a zoom command. */
const ZOOM_STEP = 1.25;

export function motifActions(session: Session, viewModel: MotifView): Action[] {
  const text = words.motif.commands;
  const always = (): boolean => true;
  return [
    ...TOOL_NAMES.map((tool): Action => ({
      id: `tool-${tool}`,
      label: () => words.motif.toolsInFull[tool],
      keys: [TOOLS[tool].key],
      isEnabled: tool === 'stamp' ? () => stampable(session).length > 0 : always,
      isOn: () => viewModel.state.tool === tool,
      run: () => {
        layLifted(session, viewModel);
        viewModel.look({ tool, span: null, selection: null });
        if (tool === 'stamp') holdStamp(session, viewModel, viewModel.cursor);
        const isBare = tool === 'trace' && !session.motif.underlay;
        session.announce(isBare ? words.underlay.noneYet : words.motif.toolsInFull[tool]);
      },
    })),
    {
      id: 'filled-shapes',
      label: () => text.filledShapes,
      keys: ['Shift+R'],
      isEnabled: always,
      isOn: () => viewModel.state.isFilled,
      run: () => viewModel.look({ isFilled: !viewModel.state.isFilled }),
    },
    {
      id: 'fill-everywhere',
      label: () => text.fillEverywhere,
      keys: ['Shift+F'],
      isEnabled: always,
      isOn: () => viewModel.state.fillsEverywhere,
      run: () => viewModel.look({ fillsEverywhere: !viewModel.state.fillsEverywhere }),
    },
    {
      id: 'symmetry-next',
      label: () => text.nextSymmetry,
      keys: ['Y'],
      isEnabled: always,
      run: () => {
        const symmetry = nextSymmetry(viewModel.state.symmetry);
        viewModel.look({ symmetry });
        session.announce(words.motif.drawing.symmetryAnnounced[symmetry]);
      },
    },
    {
      id: 'copies-follow',
      label: () => text.copiesFollow,
      keys: ['T'],
      isEnabled: always,
      isOn: () => viewModel.state.tile !== null,
      run: async () => {
        const { motif } = session;
        const measured = viewModel.state.tile ? null : await measuredFor(session, motif);
        if (session.motif.grid === motif.grid) viewModel.look({ tile: measured && tileToFollow(measured) });
      },
    },
    ...selectActions(session, viewModel),
    letteringAction(viewModel),
    ...wholeActions(session, viewModel),
    ...motifsActions(session, viewModel),
    ...stampActions(session, viewModel),
    ...slipActions(session, viewModel),
    ...underlayActions(session, viewModel),
    {
      id: 'yarn-next',
      label: () => text.nextYarn,
      keys: [']'],
      isEnabled: always,
      run: () => takeYarn(session, viewModel, 1),
    },
    {
      id: 'yarn-before',
      label: () => text.yarnBefore,
      keys: ['['],
      isEnabled: always,
      run: () => takeYarn(session, viewModel, -1),
    },
    {
      id: 'yarn-add',
      label: () => text.addYarn,
      keys: ['Shift+Y'],
      isEnabled: () => addYarnChange(session.project, '') !== null,
      run: () => addYarn(session),
    },
    {
      id: 'zoom-in',
      label: () => text.zoomIn,
      keys: ['+', '='],
      isEnabled: always,
      run: () => viewModel.zoomBy(ZOOM_STEP),
    },
    {
      id: 'zoom-out',
      label: () => text.zoomOut,
      keys: ['-'],
      isEnabled: always,
      run: () => viewModel.zoomBy(1 / ZOOM_STEP),
    },
    {
      id: 'zoom-fit',
      label: () => text.fit,
      keys: ['0'],
      isEnabled: always,
      run: () => viewModel.look({ view: null }),
    },
    {
      id: 'neighbours',
      label: () => text.neighbours,
      keys: ['N'],
      isEnabled: always,
      isOn: () => viewModel.state.showsNeighbours,
      run: () => viewModel.look({ showsNeighbours: !viewModel.state.showsNeighbours }),
    },
    {
      id: 'fabric-next',
      label: () => text.nextShowing,
      keys: ['V'],
      isEnabled: always,
      run: () => {
        const at = SHOWINGS.indexOf(viewModel.state.fabric ?? 'chart');
        const next = SHOWINGS[(at + 1) % SHOWINGS.length] ?? 'chart';
        viewModel.look({ fabric: next === 'chart' ? null : next });
        session.announce(words.motif.drawing.showings[next]);
      },
    },
    {
      id: 'square-cells',
      label: () => text.squareCells,
      keys: ['Q'],
      isEnabled: always,
      isOn: () => viewModel.state.cellShape === 'square',
      run: () => viewModel.look({ cellShape: viewModel.state.cellShape === 'square' ? 'knitted' : 'square' }),
    },
  ];
}

/** Puts the yarn `step` places on into the pen, round and round, and says which. */
function takeYarn(session: Session, viewModel: MotifView, step: number): void {
  const { yarns } = session.project;
  const colour = (viewModel.colour + step + yarns.length) % yarns.length;
  session.look({ colour });
  session.announce(words.motif.yarnTaken(yarns[colour]?.name ?? ''));
}

/** Adds a yarn and puts it into the pen. */
function addYarn(session: Session): void {
  const { yarns } = session.project;
  const change = addYarnChange(session.project, words.motif.newYarn(yarns.length + 1));
  if (!change) return;
  session.change(change);
  session.look({ colour: yarns.length });
}

export function letteringAction(viewModel: MotifView): Action {
  return {
    id: 'lettering',
    label: () => words.lettering.command,
    keys: ['A'],
    isEnabled: () => true,
    run: () => viewModel.look({ dialog: 'lettering' }),
  };
}
