/** A picture that was read takes the place of a motif. */
import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import type { MotifPicture } from '@shared/picture/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { sampleProject, type Project } from '@shared/project/index.ts';
import { takePictureChange, type TakeOptions } from '@shared/reading/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';

const sample = sampleProject();
const lighthouse = sample.motifs[0] as Project['motifs'][number];
const twoMotifs: Project = { ...sample, motifs: [lighthouse, { ...lighthouse, id: 'gull', name: 'gull' }] };

const hook: MotifPicture = {
  grid: gridFromText(['.X.', '.XX', '..2'], '.X2'),
  colours: ['#eeeeee', '#5d7591', '#aa2200'],
  ground: 0,
};
const options: TakeOptions = {
  name: 'read-chart',
  keepsYarns: false,
  title: 'hook',
  yarn: (index) => `colour ${index + 1}`,
};

function taken(project: Project, motif: string, picture: MotifPicture, keepsYarns = false): Project {
  const change = takePictureChange(project, motif, picture, { ...options, keepsYarns });
  return expectChangeLaws(project, change);
}

describe('what was read from a picture', () => {
  it('brings its yarns where there is no other motif, and known ones keep their names', () => {
    const { yarns, motifs } = taken(sample, 'lighthouse', hook);
    expect(yarns.map(({ name, colour }) => `${name} ${colour}`)).toEqual([
      'colour 1 #eeeeee',
      'slate #5d7591',
      'colour 3 #aa2200',
    ]);
    expect(gridToText((motifs[0] as (typeof motifs)[number]).grid, '.X2')).toEqual(['.X.', '.XX', '..2']);
  });

  it('leaves other motifs and the yarn of the ground as they are', () => {
    const { yarns, mainYarn, motifs } = taken(twoMotifs, 'gull', {
      ...hook,
      colours: ['#eeeeee', '#fbf7ea', '#aa2200'],
    });
    expect(yarns.map(({ name }) => name)).toEqual(['slate', 'chalk', 'colour 3']);
    expect(motifs[0]).toEqual(lighthouse);
    expect([motifs[1]?.name, mainYarn]).toEqual(['gull', 0]);
    expect(gridToText((motifs[1] as (typeof motifs)[number]).grid, '.X2')).toEqual(['.X.', '.XX', '..2']);
  });

  it('is knitted in the yarns that are there where it was ink on paper', () => {
    const ink: MotifPicture = { ...hook, grid: gridFromText(['.X', 'X.'], '.X'), colours: ['#ffffff', '#000000'] };
    const swapped: Project = { ...sample, mainYarn: 1 };
    const { yarns, mainYarn, motifs } = taken(swapped, 'lighthouse', ink, true);
    expect(yarns).toEqual(sample.yarns);
    expect(mainYarn).toBe(1);
    expect([...(motifs[0] as (typeof motifs)[number]).grid.cells]).toEqual([0, 1, 1, 0]);
  });

  it('gives its name to a motif that nothing was drawn in, and to no other', () => {
    const blank: Project = { ...sample, motifs: [{ ...lighthouse, grid: gridFromText(['..'], '.X') }] };
    expect(taken(blank, 'lighthouse', hook).motifs[0]?.name).toBe('hook');
    expect(taken(sample, 'lighthouse', hook).motifs[0]?.name).toBe('lighthouse and gulls');
  });

  it('is knitted in yarns of the project that look alike, and names new ones as none is called', () => {
    const read = { ...hook, colours: ['#fcf8ec', '#5e7690', '#aa2200'] };
    const named: Project = {
      ...sample,
      yarns: [...sample.yarns, { name: 'Colour 3', colour: '#336699', count: null, onHand: null }],
    };
    expect(taken(named, 'lighthouse', read).yarns.map(({ name, colour }) => `${name} ${colour}`)).toEqual([
      'chalk #fbf7ea',
      'slate #5d7591',
      'colour 4 #aa2200',
    ]);
    // Beside other motifs the ground is theirs.
    const beside = taken({ ...twoMotifs, yarns: named.yarns }, 'gull', read);
    expect(beside.yarns.map(({ name }) => name)).toEqual(['slate', 'chalk', 'Colour 3', 'colour 4', 'colour 5']);
  });

  it('reads the same photo twice into the same yarns', () => {
    const once = taken(sample, 'lighthouse', hook);
    expect(taken(once, 'lighthouse', hook).yarns).toEqual(once.yarns);
  });

  it('brings no yarn for a colour that no cell has', () => {
    const plain = { ...hook, grid: gridFromText(['.X', 'X.'], '.X') };
    expect(taken(sample, 'lighthouse', plain).yarns.map(({ name }) => name)).toEqual(['colour 1', 'slate']);
  });

  it('is refused where the palette cannot hold its yarns', () => {
    const yarns = Array.from({ length: 63 }, (_, i) => ({
      name: `${i}`,
      colour: `#0000${10 + i}`,
      count: null,
      onHand: null,
    }));
    const result = outcome(() => takePictureChange({ ...twoMotifs, yarns }, 'gull', hook, options));
    expect(result).toMatchObject({ ok: false, problem: { code: 'picture-too-many-colours', facts: { most: 64 } } });
  });
});
