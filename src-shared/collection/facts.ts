/** What is known of a motif of the collection without its cells: what it is found by. */
import { trueRepeat } from '../motif/repeat/index.ts';
import { yarnsUsed, type Project, type Yarn } from '../project/index.ts';
import { onlyMotif } from './alone.ts';

/** Stitches and rows. */
export interface CellSize {
  readonly width: number;
  readonly height: number;
}

export interface MotifFacts extends CellSize {
  readonly name: string;
  /** The true repeat. */
  readonly repeat: CellSize;
  /** Those that it is drawn in, the ground first. */
  readonly yarns: readonly Pick<Yarn, 'name' | 'colour'>[];
}

/** The facts of a project that holds one motif. Throws `motifs-several`. */
export function factsOf(project: Project): MotifFacts {
  const { name, grid } = onlyMotif(project);
  const { width, height } = trueRepeat(grid);
  const ground = project.mainYarn;
  const used = [ground, ...yarnsUsed(grid, ground).filter((yarn) => yarn !== ground)];
  return {
    name,
    width: grid.width,
    height: grid.height,
    repeat: { width, height },
    yarns: used.map((index) => {
      const yarn = project.yarns[index] as Yarn;
      return { name: yarn.name, colour: yarn.colour };
    }),
  };
}

/** True for names that a person takes for one: capitals and blanks around them aside. */
export function isSameName(one: string, other: string): boolean {
  const plain = (name: string): string => name.normalize('NFC').trim().toLowerCase();
  return plain(one) === plain(other);
}
