/** A project in three sizes, for what differs from one to another. */
import type { Band } from '@shared/pattern/index.ts';
import {
  projectAt,
  addSize,
  afterChange,
  changeOf,
  changeSize,
  inSize,
  renameSize,
  sampleProject,
  setPattern,
  START_PIECE,
  startBand,
  type ProjectAt,
} from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';

const rectangle = (stitches: number) => ({ kind: 'rectangle', stitches, rows: 60 }) as const;

/** Sizes S, M and L of 96, 108 and 120 stitches, M at hand, two groups of three copies. */
export function threeSizes(): ProjectAt {
  const [motif] = projectAt(sampleProject()).motifs;
  const one = settled(projectAt(sampleProject()), {
    piece: { ...START_PIECE, shape: rectangle(108) },
    patterns: [startBand(motif?.id ?? '', [3, 3])],
  });
  const made = [
    (project: ProjectAt) => renameSize(project, 0, 'M'),
    (project: ProjectAt) => addSize(project, 1, 'L', 'large'),
    (project: ProjectAt) => changeSize(project, 1, { shape: rectangle(120) }),
    (project: ProjectAt) => addSize(project, 0, 'S', 'small'),
    (project: ProjectAt) => changeSize(project, 0, { shape: rectangle(96) }),
  ].reduce((project, change) => afterChange(project, change(project)), one);
  return inSize(made, 1);
}

/** With other numbers of its only band. */
export const withBand = (project: ProjectAt, to: Partial<Band>): ProjectAt =>
  afterChange(project, changeOf('rule', setPattern(project, 'band', 0, to)));
