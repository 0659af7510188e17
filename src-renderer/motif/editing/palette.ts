/** Changes to yarns: their names and colours, how many there are, and which one is the ground. */
import { contrastRatio } from '@shared/colour/index.ts';
import { MOST_COLOURS } from '@shared/grid/index.ts';
import {
  changeOf,
  redraw,
  setPalette,
  setProject,
  yarnsInOrders,
  type Change,
  type Project,
  type Yarn,
} from '@shared/project/index.ts';

/** Colours that stay apart for colour-blind eyes (Okabe and Ito 2008), black left out: it hides its stitches. */
const NEW_COLOURS = ['#e69f00', '#56b4e9', '#009e73', '#f0e442', '#0072b2', '#d55e00', '#cc79a7'] as const;

/** Another name or colour for one yarn. */
export function yarnChange(project: Project, index: number, to: Partial<Yarn>): Change {
  const yarns = project.yarns.map((yarn, i) => (i === index ? { ...yarn, ...to } : yarn));
  return changeOf('yarns', setProject({ yarns }));
}

/** One yarn more, in the first colour that no yarn has. Null when the palette is full. */
export function addYarnChange(project: Project, name: string): Change | null {
  const { yarns } = project;
  if (yarns.length >= MOST_COLOURS) return null;
  const taken = new Set(yarns.map((yarn) => yarn.colour));
  const colour = NEW_COLOURS.find((candidate) => !taken.has(candidate)) ?? NEW_COLOURS[0];
  const added = { name, colour, count: null, onHand: null };
  return changeOf('yarns', ...setPalette(project, [...yarns, added], project.mainYarn));
}

/** True if no cell of any motif has the yarn, no row is knitted in it for another, and it is not the ground, so that it can go. */
export function isUnused(project: Project, index: number): boolean {
  const { mainYarn, motifs } = project;
  if (mainYarn === index || yarnsInOrders(project).has(index)) return false;
  return motifs.every(({ grid }) => !grid.cells.includes(index));
}

/** The palette without an unused yarn; those behind it move up. Throws `RangeError` if it is used. */
export function removeYarnChange(project: Project, index: number): Change {
  if (!isUnused(project, index)) throw new RangeError(`Yarn ${index} is used`);
  const moved = (cell: number): number => (cell > index ? cell - 1 : cell);
  const { yarns, mainYarn, motifs } = project;
  const recoloured = motifs.map((motif) => redraw(motif, { ...motif.grid, cells: motif.grid.cells.map(moved) }));
  const [palette, ...orders] = setPalette(project, yarns.toSpliced(index, 1), moved(mainYarn));
  return changeOf('yarns', palette, ...orders, ...recoloured);
}

/** Two yarns of a motif, by palette index, and how well they can be told apart (WCAG contrast ratio, 1 … 21). */
export interface YarnPair {
  readonly one: number;
  readonly other: number;
  readonly ratio: number;
}

/** Every two yarns that a motif is drawn in, those told apart least first. */
export function pairsUsed(used: readonly number[], yarns: readonly Yarn[]): YarnPair[] {
  const colourOf = (index: number): string => yarns[index]?.colour ?? '#000000';
  return used
    .flatMap((one, at) =>
      used.slice(at + 1).map((other) => ({ one, other, ratio: contrastRatio(colourOf(one), colourOf(other)) })),
    )
    .sort((a, b) => a.ratio - b.ratio);
}

/** Another yarn as the plain fabric's, which is the ground of all motifs. Null if it is that already. */
export function groundChange(project: Project, mainYarn: number): Change | null {
  return mainYarn === project.mainYarn ? null : changeOf('set-ground', ...setPalette(project, project.yarns, mainYarn));
}
