/** A picture that was read takes the place of a motif. */
import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import { takePictureChange, type MotifPicture, type TakeOptions } from '@shared/picture/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { sampleProject, type Project } from '@shared/project/index.ts';
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

  it('is refused where the palette cannot hold its yarns', () => {
    const yarns = Array.from({ length: 63 }, (_, i) => ({ name: `${i}`, colour: `#0000${10 + i}`, tex: null }));
    const result = outcome(() => takePictureChange({ ...twoMotifs, yarns }, 'gull', hook, options));
    expect(result).toMatchObject({ ok: false, problem: { code: 'picture-too-many-colours', facts: { most: 64 } } });
  });
});
