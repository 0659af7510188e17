import type { Project } from '@shared/project/index.ts';
import { newId } from '../session/new-id.ts';
import { ownMachine } from '../session/own-machine.ts';

/**
 * The project as one that was just made: for the machine that this knitter has,
 * and with pieces of ids that no other has. Until it is saved a piece on the
 * needles is known by them and by the project's name, which many new ones share.
 */
export function asNew(project: Project): Project {
  return ownMachine.given({ ...project, pieces: project.pieces.map((piece) => ({ ...piece, id: newId() })) });
}
