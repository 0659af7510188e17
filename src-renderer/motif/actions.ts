/** Commands of the Motif bench, with their shortcuts. */
import { words } from '@shared/words/index.ts';
import type { Action } from '../shell/actions/action.ts';
import type { Session } from '../shell/session.ts';
import type { MotifDesk } from './desk.ts';
import { addYarnChange } from './editing/palette.ts';
import { TOOLS, type Tool } from './editing/tool.ts';

/** One press of a zoom command. */
const ZOOM_STEP = 1.25;

const TOOL_KEYS: { readonly [T in Tool]: string } = { draw: 'D', erase: 'E', fill: 'F' };

export function motifActions(session: Session, desk: MotifDesk): Action[] {
  const text = words.motif.commands;
  const always = (): boolean => true;
  return [
    ...TOOLS.map((tool): Action => ({
      id: `tool-${tool}`,
      label: () => words.motif.tools[tool],
      keys: [TOOL_KEYS[tool]],
      isEnabled: always,
      isOn: () => desk.state.tool === tool,
      run: () => {
        desk.look({ tool });
        session.announce(words.motif.tools[tool]);
      },
    })),
    {
      id: 'yarn-next',
      label: () => text.nextYarn,
      keys: [']'],
      isEnabled: always,
      run: () => takeYarn(session, desk, 1),
    },
    {
      id: 'yarn-before',
      label: () => text.yarnBefore,
      keys: ['['],
      isEnabled: always,
      run: () => takeYarn(session, desk, -1),
    },
    {
      id: 'yarn-add',
      label: () => text.addYarn,
      keys: [],
      isEnabled: () => addYarnChange(session.project, '') !== null,
      run: () => addYarn(session),
    },
    {
      id: 'zoom-in',
      label: () => text.zoomIn,
      keys: ['Mod++', 'Mod+='],
      isEnabled: always,
      run: () => desk.zoomBy(ZOOM_STEP),
    },
    {
      id: 'zoom-out',
      label: () => text.zoomOut,
      keys: ['Mod+-'],
      isEnabled: always,
      run: () => desk.zoomBy(1 / ZOOM_STEP),
    },
    { id: 'zoom-fit', label: () => text.fit, keys: ['Mod+0'], isEnabled: always, run: () => desk.look({ view: null }) },
    {
      id: 'neighbours',
      label: () => text.neighbours,
      keys: ['N'],
      isEnabled: always,
      isOn: () => desk.state.showsNeighbours,
      run: () => desk.look({ showsNeighbours: !desk.state.showsNeighbours }),
    },
    {
      id: 'square-cells',
      label: () => text.squareCells,
      keys: ['Q'],
      isEnabled: always,
      isOn: () => desk.state.cellShape === 'square',
      run: () => desk.look({ cellShape: desk.state.cellShape === 'square' ? 'knitted' : 'square' }),
    },
  ];
}

/** Puts the yarn `step` places on into the pen, round and round, and says which. */
function takeYarn(session: Session, desk: MotifDesk, step: number): void {
  const { yarns } = session.project;
  const colour = (desk.colour + step + yarns.length) % yarns.length;
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
