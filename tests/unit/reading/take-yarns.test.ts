/** A picture that was turned into cells takes the place of a motif, in the yarns that are there. */
import { describe, expect, it } from 'vitest';
import { gridFromText, gridToText } from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { sampleProject, type Project } from '@shared/project/index.ts';
import { readPictureChange, yarnsOfColours, type PictureMotif } from '@shared/reading/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';

const sample = sampleProject();
const lighthouse = sample.motifs[0] as Project['motifs'][number];
const twoMotifs: Project = { ...sample, motifs: [lighthouse, { ...lighthouse, id: 'gull', name: 'gull' }] };
const name = (index: number): string => `colour ${index + 1}`;

/** Nearly chalk, nearly slate, and a red that is not there; the ground is the chalk. */
const hook: PictureMotif = {
  grid: gridFromText(['.X.', '.XX', '..2'], '.X2'),
  colours: ['#fcf8ec', '#5e7690', '#aa2200'],
  ground: 0,
};

function taken(project: Project, motif: string, picture: PictureMotif): Project {
  return expectChangeLaws(project, readPictureChange(project, motif, picture, name));
}
const drawn = (project: Project, index: number): string[] =>
  gridToText((project.motifs[index] as Project['motifs'][number]).grid, '.X23');

describe('a picture turned into a motif', () => {
  it('is knitted in yarns that look alike, and brings those that are missing', () => {
    const after = taken(sample, 'lighthouse', hook);
    expect(after.yarns).toEqual([...sample.yarns, { name: 'colour 3', colour: '#aa2200', count: null, onHand: null }]);
    expect(after.motifs[0]?.name).toBe(lighthouse.name);
    expect(after.mainYarn).toBe(1);
    expect(drawn(after, 0)).toEqual(['X.X', 'X..', 'XX2']);
  });

  it('has its ground in the main yarn beside other motifs, and leaves them as they are', () => {
    const after = taken(twoMotifs, 'gull', hook);
    expect(after.motifs[0]).toEqual(lighthouse);
    expect(after.mainYarn).toBe(0);
    expect(after.yarns.map(({ colour }) => colour)).toEqual(['#5d7591', '#fbf7ea', '#5e7690', '#aa2200']);
    expect(drawn(after, 1)).toEqual(['.2.', '.22', '..3']);
  });

  it('gives each yarn to one colour only, the most alike first', () => {
    const shades = { ...hook, colours: ['#fbf5e6', '#fbf7ea', '#aa2200'] };
    expect(yarnsOfColours(sample, shades)).toEqual(['new', 1, 'new']);
  });

  it('brings no yarn that no cell has', () => {
    const plain = { ...hook, grid: gridFromText(['.X', 'X.'], '.X') };
    expect(yarnsOfColours(sample, plain)).toEqual([1, 0, null]);
    expect(taken(sample, 'lighthouse', plain).yarns).toEqual(sample.yarns);
  });

  it('brings yarns by names that none has, the same each time', () => {
    const named: Project = {
      ...sample,
      yarns: [...sample.yarns, { name: 'Colour 4', colour: '#336699', count: null, onHand: null }],
    };
    const red = { ...hook, colours: ['#fcf8ec', '#22aa44', '#aa2200'] };
    const names = taken(named, 'lighthouse', red).yarns.map((yarn) => yarn.name);
    expect(names).toEqual(['slate', 'chalk', 'Colour 4', 'colour 5', 'colour 6']);
    expect(taken(named, 'lighthouse', red).yarns.map((yarn) => yarn.name)).toEqual(names);
  });

  it('is refused where the palette cannot hold its yarns, whose number is said', () => {
    const yarns = Array.from({ length: 62 }, (_, i) => ({
      name: `${i}`,
      colour: `#0000${10 + i}`,
      count: null,
      onHand: null,
    }));
    const result = outcome(() => readPictureChange({ ...sample, yarns }, 'lighthouse', hook, name));
    expect(result).toMatchObject({ problem: { code: 'palette-full', facts: { yarns: 65, most: 64 } } });
  });
});
