import { describe, expect, it } from 'vitest';
import { outcome } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { applyChange, changeOf, MOST_MOTIFS, sampleProject, setMotif, type Project } from '@shared/project/index.ts';
import { addMotif, deleteMotif, duplicateMotif, motifBeside } from '../../../src-renderer/motif/editing/motifs.ts';
import { listedAfter } from '../../../src-renderer/motif/panel/listed.ts';
import { motifToShow } from '../../../src-renderer/session/motif-to-show.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';

const sample = sampleProject();
const idsOf = ({ motifs }: Project): string[] => motifs.map(({ id }) => id);

/** The sample with an empty motif and a copy of the lighthouse behind it. */
function withThree(): Project {
  const two = applyChange(sample, addMotif(sample, 'lighthouse', 'gull', 'motif-1').change);
  return applyChange(two, duplicateMotif(two, 'lighthouse', 'lighthouse copy', 'motif-2').change);
}

describe('the list of motifs', () => {
  it('is the same while the motif on the bench is painted, and another once anything else is', () => {
    const { motifs } = withThree();
    const painted = (id: string): Motif[] => motifs.map((motif) => (motif.id === id ? { ...motif } : motif));
    expect(listedAfter(motifs, painted('motif-1'), 'motif-1')).toBe(motifs);
    for (const now of [painted('motif-2'), motifs.slice(1), [...motifs].reverse()]) {
      expect(listedAfter(motifs, now, 'motif-1')).toBe(now);
    }
    // What was painted while it lay there shows in its row once another does.
    const later = painted('motif-1');
    expect(listedAfter(motifs, later, 'lighthouse')).toBe(later);
  });

  it('takes an empty motif of the present size behind the present one', () => {
    const { change, shown } = addMotif(sample, 'lighthouse', 'gull', 'motif-1');
    const after = expectChangeLaws(sample, change);
    const [lighthouse, gull] = after.motifs as [Motif, Motif];
    expect(gull).toMatchObject({ id: shown, name: 'gull', shows: lighthouse.shows });
    expect([gull.grid.width, gull.grid.height]).toEqual([lighthouse.grid.width, lighthouse.grid.height]);
    expect(gull.grid.cells.every((cell) => cell === sample.mainYarn)).toBe(true);
  });

  it('takes a copy behind its original, under a name that a file can hold', () => {
    const { change, shown } = duplicateMotif(sample, 'lighthouse', 'x'.repeat(90), 'copy');
    const after = expectChangeLaws(sample, change);
    expect(after.motifs[1]).toEqual({ ...sample.motifs[0], id: shown, name: 'x'.repeat(80) });
  });

  it('gives each motif an id of its own, and puts the newest beside where it came from', () => {
    const three = withThree();
    expect(idsOf(three)).toEqual(['lighthouse', 'motif-2', 'motif-1']);
    expect(motifBeside(three, 'motif-1', 1)).toBe('lighthouse');
    expect(motifBeside(three, 'lighthouse', -1)).toBe('motif-1');
    expect(motifBeside(three, 'lighthouse', 1)).toBe('motif-2');
  });

  it('loses a motif that no group knits, and its neighbour takes the bench', () => {
    const three = withThree();
    const { change, shown } = deleteMotif(three, 'motif-1');
    expect(idsOf(expectChangeLaws(three, change))).toEqual(['lighthouse', 'motif-2']);
    expect(shown).toBe('motif-2');
  });

  it('keeps a motif that the piece needs, and says where; and the last one', () => {
    const inUse = outcome(() => deleteMotif(withThree(), 'lighthouse'));
    expect(inUse).toMatchObject({
      problem: {
        code: 'motif-in-use',
        facts: { motif: 'lighthouse and gulls', patterns: [{ kind: 'band', number: 0 }] },
      },
    });
    expect(outcome(() => deleteMotif(sample, 'lighthouse'))).toMatchObject({ problem: { code: 'motif-last' } });
  });

  it('is full at the most that a file holds', () => {
    const motif = sample.motifs[0] as Motif;
    const full = { ...sample, motifs: Array.from({ length: MOST_MOTIFS }, (_, at) => ({ ...motif, id: `m${at}` })) };
    expect(outcome(() => addMotif(full, 'm0', 'one more', 'new'))).toMatchObject({
      problem: { code: 'motifs-too-many' },
    });
  });
});

describe('undo with several motifs', () => {
  it('leaves a motif on the bench when it takes away the one that lies there', () => {
    const session = new Session(sample, true);
    const { change, shown } = addMotif(session.project, 'lighthouse', 'gull', 'gull');
    session.change(change);
    session.look({ motif: shown });
    session.undo();
    expect(session.motif.id).toBe('lighthouse');
    session.redo();
    expect(session.motif.id).toBe(shown);
  });

  it('brings the motif that it changes onto the bench', () => {
    const session = new Session(withThree(), true);
    session.look({ motif: 'motif-2' });
    session.change(changeOf('rename-motif', setMotif('motif-2', { name: 'gannet' })));
    session.look({ motif: 'lighthouse' });
    session.undo();
    expect(session.motif.id).toBe('motif-2');
  });

  it('stays where it is when all motifs change, or none', () => {
    const { motifs } = withThree();
    const all = motifs.map(({ id }) => ({ of: 'motif', motif: id }) as const);
    expect(motifToShow(all, motifs, motifs, 'motif-1')).toBe('motif-1');
    expect(motifToShow([{ of: 'band', piece: 'piece-1', pattern: 'band-1' }], motifs, motifs, 'motif-1')).toBe(
      'motif-1',
    );
  });
});
