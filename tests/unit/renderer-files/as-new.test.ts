import { expect, it } from 'vitest';
import { emptyProject, projectAt } from '@shared/project/index.ts';
import { asNew } from '../../../src-renderer/files/as-new.ts';

it('a new project has pieces of its own, and is the same otherwise', () => {
  const empty = emptyProject('Untitled', 'Motif 1');
  const [one, other] = [asNew(empty), asNew(empty)];
  expect(one.pieces[0]?.id).not.toBe(other.pieces[0]?.id);
  expect(one.pieces.map((piece) => ({ ...piece, id: 'the same' }))).toEqual(
    empty.pieces.map((piece) => ({ ...piece, id: 'the same' })),
  );
  expect({ ...one, pieces: [] }).toEqual({ ...empty, pieces: [] });
  expect(projectAt(one).at.piece).toBe(one.pieces[0]?.id);
});
