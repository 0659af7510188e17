/**
 * Mistakes made in the running orders that the program gives: acts dropped,
 * doubled, moved by a row and put at the other side. The simulated knitter
 * stops at each or comes to something else, but for those that hands can make
 * without harm (`knitter/harmless.ts` says why of each).
 */
import { describe, expect, it } from 'vitest';
import { inSize, sampleProject, sizesOf, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { orderedWith } from '../knit/knit-plan.ts';
import { projectsOf } from '../knit/tried.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../unit/fabric/pieces.ts';
import { EXAMPLES } from './knitter/examples/index.ts';
import { bare } from './knitter/examples/told.ts';
import { isSameWork, knit, mutations, type Knitted, type Mutation } from './knitter/index.ts';

/** Random projects whose orders are spoiled, in parts, so that none takes long. */
const PARTS = 10;
const EACH = 3;

const everSeen = new Set<string>();

/** The first that have an order, each in its largest size. */
function randomProjects(): { readonly of: string; readonly project: ProjectAt }[] {
  return projectsOf(4 * PARTS * EACH, 7)
    .map((project, number) => ({
      of: `project ${number}`,
      project: inSize(project, sizesOf(project).length - 1),
    }))
    .filter(({ project }) => orderedWith(project) !== null)
    .slice(0, PARTS * EACH);
}

interface Tried extends Mutation {
  readonly of: string;
  readonly seen: boolean;
}

/**
 * The mistakes of each kind with each kind of act of an order: the first of
 * them and one further up, which may differ in what stands around it.
 */
function someOf(all: readonly Mutation[]): Mutation[] {
  const kinds = new Map<string, Mutation[]>();
  for (const mutation of all) {
    const kind = `${mutation.act} ${mutation.mistake} ${mutation.harmless}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), mutation]);
  }
  return [...kinds.values()].flatMap((alike) => {
    const further = alike[Math.floor(alike.length * 0.6)] as Mutation;
    return further === alike[0] ? [further] : [alike[0] as Mutation, further];
  });
}

/** Null for a project without an order. */
function tried(of: string, project: ProjectAt): Tried[] | null {
  const ordered = orderedWith(project);
  if (!ordered) return null;
  const order = bare(ordered.order);
  const right = knit(order, ordered.knitWith) as Knitted;
  if (!right.ok) throw new Error(`${of}: its order cannot be knitted`);
  return someOf(mutations(order, right)).map((mutation) => {
    const done = knit(mutation.order, ordered.knitWith);
    return { ...mutation, of, seen: !done.ok || !isSameWork(done, right) };
  });
}

const say = ({ of, reading, act, mistake }: Tried): string => `${of}: ${act} at ${reading} ${mistake}`;

const unseen = (all: readonly Tried[]): string[] =>
  all.filter(({ seen, harmless }) => !seen && harmless === null).map(say);

describe('a mistake in an order that the program gives', () => {
  // The worked checks of placing, common practice, no source.
  const worked = { motif: BLANK_FIRST_12_BY_31, copies: [3, 3], stitches: 120, rows: 160 };
  it.each<[string, ProjectAt]>([
    ['the sample', projectAt(sampleProject())],
    ['two groups of three copies', projectWith({ ...worked, rows: 60 })],
    ['a hem with a motif on its outside', projectWith({ ...worked, piece: { hemRows: 100 } })],
  ])('is seen in that of %s, unless it is harmless', (of, project) => {
    const all = tried(of, project) ?? [];
    expect(unseen(all)).toEqual([]);
    expect(all.filter(({ seen }) => seen).length).toBeGreaterThan(20);
  });

  it.each(Array.from({ length: PARTS }, (_, part) => part + 1))(
    'is seen in those of random projects, unless it is harmless (part %i)',
    (part) => {
      for (const { of, project } of randomProjects().slice((part - 1) * EACH, part * EACH)) {
        const some = tried(of, project) ?? [];
        expect(unseen(some)).toEqual([]);
        for (const { act, seen } of some) if (seen) everSeen.add(act);
      }
    },
  );

  // Of what the parts above have seen: the random projects have every kind of act.
  it('was seen with every kind of act', () => {
    const known = new Set(
      Object.values(EXAMPLES).flatMap(({ order }) =>
        order.flatMap((item) => (item.kind === 'stop' ? item.acts.map(({ act }) => act) : [])),
      ),
    );
    expect([...known].filter((act) => !everSeen.has(act))).toEqual([]);
  });
});
