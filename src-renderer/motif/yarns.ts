/** Yarns of the palette: taken into the pen, added, made main, and removed. */
import { freeYarnName } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { Session } from '../session/session.ts';
import { addYarnChange, groundChange, removeYarnChange } from './editing/palette.ts';
import type { MotifView } from './view-state.ts';

/** Puts the yarn `step` places on into the pen, round and round, and says which. */
export function takeYarn(session: Session, viewModel: MotifView, step: number): void {
  const { yarns } = session;
  const colour = (viewModel.colour + step + yarns.length) % yarns.length;
  session.look({ colour });
  session.announce(words.motif.yarnTaken(yarns[colour]?.name ?? ''));
}

/** Adds a yarn and puts it into the pen. */
export function addYarn(session: Session): void {
  const { yarns } = session;
  const names = yarns.map(({ name }) => name);
  const called = freeYarnName(names, yarns.length, (index) => words.motif.newYarn(index + 1));
  const change = addYarnChange(session.project, called);
  if (!change) return;
  session.change(change);
  session.look({ colour: yarns.length });
  session.announce(words.motif.yarnAdded(called));
}

/** Makes a yarn the plain fabric's, which is the ground of all motifs. */
export function makeMain(session: Session, index: number): void {
  const before = session.mainYarn;
  const change = groundChange(session.project, index);
  if (!change) return;
  session.change(change);
  // A pen that lays the ground draws nothing: it takes the yarn that was main.
  if (session.view.colour === index) session.look({ colour: before });
}

/** Removes a yarn that is not used; those behind it move up, and the pen keeps its yarn. */
export function removeYarn(session: Session, index: number): void {
  const { colour } = session.view;
  session.change(removeYarnChange(session.project, index));
  if (colour >= index && colour > 0) session.look({ colour: colour - 1 });
}
