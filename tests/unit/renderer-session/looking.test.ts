/** Looking at pieces and sizes is not editing; what is edited is shown when it is taken back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addSize,
  changeCopies,
  changeOf,
  changePiece,
  changeSize,
  insertInto,
  moveWithin,
  projectAt,
  removeFrom,
  removeSize,
  sampleProject,
  setProject,
  type PieceInSizes,
  type Place,
  type Project,
} from '@shared/project/index.ts';
import { newId } from '../../../src-renderer/session/new-id.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { anyProject } from '../../property/projects.ts';

/** The sample with a front beside the sleeve, in sizes S and M. */
function twoPieces(): Project {
  const session = new Session(sampleProject(), true);
  const [sleeve] = session.project.pieces as [PieceInSizes];
  session.change(addSize(session.current, 1, 'M', 'medium'));
  const [graded] = session.project.pieces as [PieceInSizes];
  session.change(changeOf('add-piece', insertInto('pieces', 1, frontLike(graded))));
  expect(sleeve.id).toBe('piece-1');
  return session.project;
}

function frontLike(piece: PieceInSizes): PieceInSizes {
  const patterns = piece.patterns.map((pattern, at) => ({ ...pattern, id: `front-${at}` }));
  return { ...piece, id: 'front', name: 'front', patterns };
}

describe('looking at pieces and sizes, in any order', () => {
  it('leaves the project the same object, saved, and nothing to undo', () => {
    fc.assert(
      fc.property(anyProject, fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 8 }), ({ whole }, looks) => {
        const [piece] = whole.pieces as [PieceInSizes];
        const project: Project = { ...whole, pieces: [piece, frontLike(piece)] };
        const session = new Session(project, true);
        const told: unknown[] = [];
        session.onEdits((edits) => told.push(edits));
        for (const [p, s] of looks) {
          const at = {
            piece: project.pieces[p % 2]?.id ?? '',
            size: project.sizes[s % project.sizes.length]?.id ?? '',
          };
          session.look(at);
          expect(session.current.at).toEqual(at);
          expect(session.current).toBe(projectAt(project, at));
        }
        expect(session.project).toBe(project);
        expect([session.isUnsaved, session.undoName, session.redoName, told]).toEqual([false, null, null, []]);
      }),
      { numRuns: 60 },
    );
  });

  it('begins at the first piece in the first size when another project comes', () => {
    const session = new Session(twoPieces(), true);
    session.look({ piece: 'front', size: 'medium' });
    session.replace(twoPieces(), null, true);
    expect(session.current.at).toEqual({ piece: 'piece-1', size: 'size-1' });
  });
});

describe('a step that is taken back', () => {
  const FIRST: Place = { piece: 'piece-1', size: 'size-1' };
  const open = (): Session => new Session(twoPieces(), true);

  it('shows the piece that it changes', () => {
    const session = open();
    session.look({ piece: 'front' });
    session.change(changePiece(session.current, 'gauge', { gauge: { stitches: 30, rows: 44 } }));
    session.look(FIRST);
    session.undo();
    expect(session.current.at).toEqual({ piece: 'front', size: 'size-1' });
    session.look(FIRST);
    session.redo();
    expect(session.current.at).toEqual({ piece: 'front', size: 'size-1' });
  });

  it('shows the piece that it moves in the list', () => {
    const session = open();
    session.look({ piece: 'front' });
    session.change(changeOf('move-piece', moveWithin('pieces', 'front', 0)));
    session.look(FIRST);
    session.undo();
    expect(session.current.at.piece).toBe('front');
    session.look(FIRST);
    session.redo();
    expect(session.current.at.piece).toBe('front');
  });

  it('shows the size that it changes, and stays where all sizes change', () => {
    const session = open();
    session.change(changeSize(session.current, 1, { hemRows: 12 }));
    session.change(changeCopies(session.current, 1, 0, 0, 3));
    session.change(changePiece(session.current, 'gauge', { gauge: { stitches: 30, rows: 44 } }));
    session.undo();
    expect(session.current.at).toEqual(FIRST);
    session.undo();
    expect(session.current.at).toEqual({ ...FIRST, size: 'medium' });
    session.look(FIRST);
    session.undo();
    expect(session.current.at).toEqual({ ...FIRST, size: 'medium' });
  });

  it('stays where it is when it changes no piece', () => {
    const session = open();
    session.look({ piece: 'front', size: 'medium' });
    session.change(changeOf('rename-project', setProject({ name: 'x' })));
    session.undo();
    expect(session.current.at).toEqual({ piece: 'front', size: 'medium' });
  });

  it('brings back a piece and a size that went, and shows them; their neighbours take their place', () => {
    const session = open();
    session.look({ piece: 'front', size: 'medium' });
    session.change(changeOf('remove-piece', removeFrom('pieces', 'front')));
    expect(session.current.at).toEqual({ piece: 'piece-1', size: 'medium' });
    session.undo();
    expect(session.current.at.piece).toBe('front');
    session.redo();
    expect(session.current.at.piece).toBe('piece-1');
    session.change(removeSize(session.current, 1));
    expect(session.current.at).toEqual(FIRST);
    session.undo();
    expect(session.current.at).toEqual({ ...FIRST, size: 'medium' });
  });
});

it('ids are of one kind, and no two alike', () => {
  const ids = Array.from({ length: 2000 }, newId);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids.every((id) => /^[0-9a-z]{12}$/.test(id))).toBe(true);
});
