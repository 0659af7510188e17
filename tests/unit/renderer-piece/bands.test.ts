/** Bands that are added and removed, and the one in the form. */
import { describe, expect, it } from 'vitest';
import { bandsOf, type Band } from '@shared/pattern/index.ts';
import { addBand, removeBand } from '../../../src-renderer/piece/panel/bands.ts';
import { plannedOf } from '../../../src-renderer/piece/planned.ts';
import { PieceViewModel } from '../../../src-renderer/piece/view-model.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { projectOf } from './projects.ts';
import { settled } from '../../written-projects.ts';

function bench() {
  const one = projectOf(['###'], [1], { piece: { shape: { kind: 'rectangle', stitches: 20, rows: 60 } } });
  const session = new Session(settled(one).whole, true);
  return { session, viewModel: new PieceViewModel(session) };
}
const positions = (session: Session): Band['position'][] => bandsOf(session.current).map(({ position }) => position);

describe('a band that is added', () => {
  it('stands above the highest one that is placed, has the motif at hand, and is in the form', () => {
    const { session, viewModel } = bench();
    const [placed] = bandsOf(plannedOf(session.current).plan);
    addBand(session, viewModel);
    expect(positions(session)[1]).toEqual({ kind: 'from-row', row: (placed?.lastRow ?? 0) + 11 });
    expect(bandsOf(session.current)[1]?.groups.map(({ motif }) => motif)).toEqual([session.motifId]);
    expect(viewModel.band).toBe(1);
    expect(session.undoName).toBe('add-band');
  });

  it('is centred where it is the first', () => {
    const { session, viewModel } = bench();
    removeBand(session, viewModel);
    expect([positions(session), viewModel.band]).toEqual([[], 0]);
    addBand(session, viewModel);
    expect([positions(session)[0]?.kind, viewModel.band]).toEqual(['centred', 0]);
  });
});

describe('the band in the form', () => {
  it('is the one before a band that was removed', () => {
    const { session, viewModel } = bench();
    addBand(session, viewModel);
    removeBand(session, viewModel);
    expect([bandsOf(session.current).length, viewModel.band, session.undoName]).toEqual([1, 0, 'remove-band']);
  });

  it('is one that is there when undo took the chosen one away, for the commands too', () => {
    const { session, viewModel } = bench();
    addBand(session, viewModel);
    session.undo();
    expect(viewModel.band).toBe(0);
    const keep = viewModel.commands['keep-needles'];
    expect(keep.whyNot()).toBeNull();
    void keep.run();
    expect(bandsOf(session.current)[0]?.rule.kind).toBe('by-hand');
  });
});
