/** Commands that change the whole motif, each one step of undo. */
import { words } from '@shared/words/index.ts';
import { actionsFor, type ActionsOf } from '../commands/command.ts';
import type { Session } from '../session/session.ts';
import type { MotifView } from './view-state.ts';
import { mirrorAcross, mirrorUp, quarterTurn, type CellBox, type Grid } from '@shared/grid/index.ts';
import { layLifted, turnLifted } from './lifted-selection.ts';
import { noSlips } from './slip-actions.ts';
import { ASKS_MEASURE, WHOLE, WHOLE_NAMES, type WholeName } from './editing/whole.ts';
import { isMeasuredAtOnce, measuredFor, measureOf } from './measured.ts';

/** Commands that act on what is lifted, if anything is. */
const TURNS: { readonly [Name in WholeName]?: (cells: Grid) => Grid } = {
  'mirror-across': mirrorAcross,
  'mirror-up': mirrorUp,
  'quarter-turn': quarterTurn,
};

/**
 * Always at hand, but for mending where nothing is to be mended, which is known:
 * working out beforehand whether another would change anything takes as long as
 * doing it. One that changes nothing says so. Those that ask
 * what a large drawing measures wait for the answer, and act only if the drawing
 * is still the same.
 */
export function wholeActions(session: Session, viewModel: MotifView): ActionsOf<'whole'> {
  const text = words.motif.whole;
  return actionsFor(
    WHOLE_NAMES,
    (name) => name,
    (name) => ({
      whyNot: name === 'mend-slips' ? noSlips(session, true) : () => null,
      run: async () => {
        const turn = TURNS[name];
        if (turn && turnLifted(viewModel, turn)) {
          session.announce(words.motif.select.turned(words.commands[name]));
          return;
        }
        layLifted(session, viewModel);
        const { motif, project } = session;
        const ground = project.mainYarn;
        const drawing = { grid: motif.grid, ground };
        if (ASKS_MEASURE.has(name) && !isMeasuredAtOnce(drawing)) {
          const measured = await measuredFor(session, drawing);
          if (session.motif.grid !== motif.grid || session.project.mainYarn !== ground) {
            session.announce(text.changedMeanwhile);
            return;
          }
          if (!measured) return;
        }
        const change = WHOLE[name](motif, {
          cursor: viewModel.cursor,
          selected: selectedBox(viewModel),
          colour: viewModel.colour,
          ground,
        });
        if (change) session.change(change);
        const isAsked = name === 'mend-slips' && measureOf(drawing).slips.length > 0;
        const nothing = isAsked ? words.understanding.slips.choose : text.nothing;
        session.announce(change ? text.done(words.commands[name]) : nothing);
      },
    }),
  );
}

function selectedBox({ state: { selection } }: MotifView): CellBox | null {
  return selection && { ...selection.at, width: selection.cells.width, height: selection.cells.height };
}
