/** A motif kept from one project and put in another. */
import { describe, expect, it } from 'vitest';
import { motifAlone, onlyMotif, putIn } from '@shared/collection/index.ts';
import { gridFromText, gridToText, MOST_COLOURS } from '@shared/grid/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import {
  applyChange,
  commit,
  MOST_MOTIFS,
  projectAround,
  projectFromText,
  projectToText,
  sampleProject,
  startHistory,
  undo,
  type Project,
  type Yarn,
} from '@shared/project/index.ts';
import { UNDERLAY } from '../project/small-project.ts';

const yarn = (name: string, colour: string, tex: number | null = null): Yarn => ({
  name,
  colour,
  count: tex === null ? null : { system: 'tex', value: tex, plies: 1 },
  onHand: null,
});
const [slate, chalk] = [yarn('slate', '#5d7591'), yarn('chalk', '#fbf7ea')];
const [rust, moss] = [yarn('rust', '#a4492a', 250), yarn('moss', '#5f6f3a')];
const signs = '.X23456789';

const project = (yarns: readonly Yarn[], rows: readonly string[], ground = 0, name = 'star'): Project =>
  projectAround('work', name, gridFromText(rows, signs), ground, 'worn', yarns);

/** What comes of putting the motif of one project in another. */
function put(into: Project, from: Project) {
  const done = putIn(into, motifAlone(from, 'motif-1'), 'motif-1', 'new');
  const after = applyChange(into, done.change);
  const motif = after.motifs[1];
  return { ...done, after, rows: motif && gridToText(motif.grid, signs), yarns: after.yarns.map(({ name }) => name) };
}

describe('a motif by itself', () => {
  const work: Project = {
    ...project([slate, rust, chalk, moss], ['.2', '2.'], 2),
    motifs: [
      ...project([slate], ['.'], 0, 'other').motifs,
      {
        ...(project([slate, rust, chalk, moss], ['.2', '2.'], 2).motifs[0] as Project['motifs'][number]),
        id: 'mine',
        shows: 'needles',
        isLettering: true,
        underlay: UNDERLAY,
      },
    ],
    mainYarn: 2,
  };

  it('has the yarns that it is drawn in, and is what it was', () => {
    const alone = motifAlone(work, 'mine');
    expect(alone.yarns).toEqual([slate, chalk]);
    expect(alone.mainYarn).toBe(1);
    const { grid, ...motif } = onlyMotif(alone);
    expect(motif).toEqual({ id: 'motif-1', name: 'star', shows: 'needles', isLettering: true, underlay: null });
    expect(gridToText(grid, signs)).toEqual(['.X', 'X.']);
  });

  it('is a project that opens again', () => {
    const alone = motifAlone(work, 'mine');
    expect(projectFromText(projectToText(alone))).toEqual(alone);
  });

  it('is not told of a project with several', () => {
    expect(() => onlyMotif(work)).toThrow('motifs-several');
  });
});

describe('a motif put in a project', () => {
  it('takes the yarns that are there where they look alike, whatever they are called', () => {
    const here = project([chalk, rust, slate], ['..']);
    const { rows, yarns, added, exchanged } = put(here, project([chalk, yarn('denim', '#5e7692')], ['.X', 'X.']));
    expect(rows).toEqual(['.2', '2.']);
    expect(yarns).toEqual(['chalk', 'rust', 'slate']);
    expect({ added, exchanged }).toEqual({ added: [], exchanged: null });
  });

  it('brings those that are not, with what is known of them, under a name that none has', () => {
    const here = project([chalk, yarn('Rust', '#101010')], ['..']);
    const { rows, after, added } = put(here, project([chalk, rust], ['.X']));
    expect(rows).toEqual(['.2']);
    expect(after.yarns[2]).toEqual({ ...rust, name: 'rust (2)' });
    expect(added).toEqual(['rust (2)']);
  });

  it('stands on the ground that is there', () => {
    const { rows, yarns } = put(project([chalk, slate], ['..']), project([moss, rust], ['.X', 'X.']));
    expect(rows).toEqual(['.2', '2.']);
    expect(yarns).toEqual(['chalk', 'slate', 'rust']);
  });

  it('has its figure in the yarn of its ground where that figure is the ground here: it must be seen', () => {
    const { rows, yarns, exchanged } = put(project([chalk, slate], ['..']), project([slate, chalk], ['.X', 'X.']));
    expect(rows).toEqual(['.X', 'X.']);
    expect(yarns).toEqual(['chalk', 'slate']);
    expect(exchanged).toEqual({ ground: 'slate', figure: 'chalk' });
  });

  it('so has one of several figures, and brings the yarn of its ground where it is not there', () => {
    const from = project([moss, chalk, rust], ['.X2']);
    const { rows, yarns, added, exchanged } = put(project([chalk, slate], ['..']), from);
    expect(rows).toEqual(['.23']);
    expect(yarns.slice(2)).toEqual(['moss', 'rust']);
    expect(added).toEqual(['moss', 'rust']);
    expect(exchanged).toEqual({ ground: 'moss', figure: 'chalk' });
  });

  it('keeps figures apart that look alike', () => {
    const from = project([chalk, rust, yarn('brick', '#a54a2b')], ['.X2']);
    const { rows, yarns } = put(project([chalk, rust], ['..']), from);
    expect(rows).toEqual(['.X2']);
    expect(yarns).toEqual(['chalk', 'rust', 'brick']);
  });

  it('is called as no other is', () => {
    const here = project([chalk, slate], ['..'], 0, 'Star');
    expect(put(here, project([chalk, slate], ['.X'])).name).toBe('star (2)');
    const long = 'x'.repeat(80);
    const there = put(project([chalk, slate], ['..'], 0, long), project([chalk, slate], ['.X'], 0, long)).name;
    expect(there).toBe(`${'x'.repeat(76)} (2)`);
  });

  it('comes behind the motif on the bench, and changes no other', () => {
    const here = { ...sampleProject(), motifs: [...sampleProject().motifs, ...project([], ['.']).motifs] };
    const { change } = putIn(here, project([slate, chalk], ['.X']), 'lighthouse', 'new');
    const after = applyChange(here, change);
    expect(after.motifs.map(({ id }) => id)).toEqual(['lighthouse', 'new', 'motif-1']);
    expect(after.pieces).toBe(here.pieces);
    expect(after.motifs[0]).toBe(here.motifs[0]);
  });

  it('is one step of undo, its yarns with it', () => {
    const here = project([chalk, slate], ['..']);
    const history = commit(startHistory(here, true), put(here, project([moss, rust], ['.X'])).change);
    expect(history.project.yarns).toHaveLength(3);
    expect(undo(history).project).toEqual(here);
  });

  it('is refused where a project can have no more motifs, or yarns', () => {
    const full = project([chalk, slate], ['..']);
    const [one] = full.motifs;
    const motifs = Array.from({ length: MOST_MOTIFS }, (_, at) => ({ ...one, id: `m-${at}` })) as Project['motifs'];
    const code = (into: Project) => {
      try {
        putIn(into, project([moss, rust], ['.X']), 'm-0', 'new');
        return null;
      } catch (error) {
        return problemOf(error).code;
      }
    };
    expect(code({ ...full, motifs })).toBe('motifs-too-many');
    const grey = (at: number): string => `#${(0x303030 + at * 0x020304).toString(16)}`;
    const yarns = Array.from({ length: MOST_COLOURS }, (_, at) => yarn(`grey ${at}`, grey(at)));
    expect(code({ ...full, yarns })).toBe('palette-full');
  });
});
