/** What of the window's store becomes another value when something changes, which is what wakes who reads it. */
import { describe, expect, it } from 'vitest';
import { changeOf, pieceIn, sampleProject, setProject } from '@shared/project/index.ts';
import { strokeChange } from '../../../src-renderer/motif/editing/strokes.ts';
import { plannedOf } from '../../../src-renderer/piece/planned.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { liveFields, type MakeLive } from '../../../src-renderer/ui/live.ts';

/** Live values that tell when they become others. */
function watchedLive(): { readonly make: MakeLive; changedBy(work: () => void): number } {
  let changed = 0;
  const make: MakeLive = <T>(start: T) => {
    let value = start;
    return {
      get now() {
        return value;
      },
      set now(next: T) {
        if (next !== value) changed++;
        value = next;
      },
    };
  };
  return {
    make,
    changedBy(work) {
      changed = 0;
      work();
      return changed;
    },
  };
}

function opened() {
  const live = watchedLive();
  const session = new Session(sampleProject(), true, live.make);
  let told = 0;
  session.subscribe(() => told++);
  const toldBy = (work: () => void): number => {
    const before = told;
    work();
    return told - before;
  };
  /** Paints the first cell in another yarn than it has. */
  const paint = (): void => {
    const colour = session.motif.grid.cells[0] === 1 ? 0 : 1;
    const change = strokeChange(session.motif, 'draw', colour, [{ column: 0, row: 0 }]);
    if (change) session.change(change);
  };
  return { session, live, toldBy, paint };
}

describe('a move of the pointer', () => {
  it('changes the line under it and nothing else, and tells no follower of the work', () => {
    const { session, live, toldBy } = opened();
    expect(live.changedBy(() => session.point('Row 1'))).toBe(1);
    expect(live.changedBy(() => session.point('Row 1'))).toBe(0);
    expect(session.pointer).toBe('Row 1');
    expect(toldBy(() => session.point('Row 2'))).toBe(0);
  });
});

describe('what is said and notified', () => {
  it('is another value each time, and tells no follower of the work', () => {
    const { session, live, toldBy } = opened();
    session.announce('Undone.');
    expect(live.changedBy(() => session.announce('Undone.'))).toBe(1);
    expect(live.changedBy(() => session.notify({ kind: 'done', text: 'Saved.' }))).toBe(1);
    expect(toldBy(() => session.announce('Redone.'))).toBe(0);
    expect(toldBy(() => session.notify(null))).toBe(0);
  });
});

describe('a cell that is painted', () => {
  it('leaves yarns, pieces, the piece in its size, the name and the view what they are', () => {
    const { session, live, toldBy, paint } = opened();
    const { yarns, mainYarn, pieces, piece, projectName, motifId, file } = session;
    expect(toldBy(paint)).toBe(1);
    expect([session.yarns, session.pieces, session.piece, session.file]).toEqual([yarns, pieces, piece, file]);
    expect(session.yarns === yarns && session.pieces === pieces && session.piece === piece).toBe(true);
    expect([session.mainYarn, session.projectName, session.motifId]).toEqual([mainYarn, projectName, motifId]);
    // The project, its motifs, the one on the bench, and the project as it is seen; undo is called the same.
    expect(live.changedBy(paint)).toBe(4);
  });
});

describe('a project that is renamed', () => {
  it('is not planned again', () => {
    const { session } = opened();
    const before = plannedOf(session.current);
    const piece = pieceIn(session.current);
    session.change(changeOf('rename-project', setProject({ name: 'Kelp' })));
    expect(session.projectName).toBe('Kelp');
    expect(pieceIn(session.current)).toBe(piece);
    expect(plannedOf(session.current)).toBe(before);
  });
});

describe('looking', () => {
  it('changes what is looked at otherwise and nothing else', () => {
    const { session, live } = opened();
    expect(live.changedBy(() => session.look({ showsFloats: false, paper: 'a4' }))).toBe(1);
    expect({ ...session.view }).toMatchObject({ showsFloats: false, paper: 'a4', bench: 'motif' });
  });
});

describe('fields that are followed', () => {
  it('stay as they are where they are left out, and can be set to nothing', () => {
    const { make, changedBy } = watchedLive();
    const fields = liveFields<{ one: number; other: string | null }>({ one: 1, other: 'a' }, make);
    expect(changedBy(() => fields.set({ other: null }))).toBe(1);
    expect(fields.now).toEqual({ one: 1, other: null });
    expect(changedBy(() => fields.set({ one: 1 }))).toBe(0);
  });
});
