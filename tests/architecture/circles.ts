/** Circles of imports: between folders, where a folder and all folders in it count as one, or between files. */
import type { Import } from './imports.ts';

/** One folder of a layer importing another, or one file: `src-shared/strands → src-shared/yarn`. */
export type Arrow = string;

/** The folder that a file counts for: the first below its layer. Files beside those folders stand for the layer itself. */
export function folderOf(file: string): string {
  const [layer, folder, ...rest] = file.split('/') as [string, ...string[]];
  return folder === undefined || rest.length === 0 ? layer : `${layer}/${folder}`;
}

/** What a folder or file imports, by its path, each with the imports that do so. */
type Graph = Map<string, Map<string, Import[]>>;

function graphOf(imports: readonly Import[], nodeOf: (file: string) => string): Graph {
  const graph: Graph = new Map();
  for (const one of imports) {
    const [from, to] = [nodeOf(one.from), nodeOf(one.to)];
    if (from === to) continue;
    const targets = graph.get(from) ?? new Map<string, Import[]>();
    graph.set(from, targets.set(to, [...(targets.get(to) ?? []), one]));
  }
  return graph;
}

/** The shortest way from one to another, both named, or null. */
function wayBetween(graph: Graph, from: string, to: string): string[] | null {
  const cameFrom = new Map<string, string | null>([[from, null]]);
  for (const node of cameFrom.keys()) {
    if (node === to) {
      const way: string[] = [];
      for (let at: string | null = to; at !== null; at = cameFrom.get(at) ?? null) way.unshift(at);
      return way;
    }
    for (const next of graph.get(node)?.keys() ?? []) if (!cameFrom.has(next)) cameFrom.set(next, node);
  }
  return null;
}

export interface ArrowOnCircle {
  readonly arrow: Arrow;
  /** The shortest circle that it lies on, back to where it began. */
  readonly circle: readonly string[];
  /** What makes the arrow. */
  readonly imports: readonly Import[];
}

/**
 * Every arrow that lies on a circle, between folders or whatever `nodeOf` says
 * that a file counts for. Arrows are told and not whole circles: one import
 * taken away can only make their number smaller, while it may leave longer
 * circles where there was a short one.
 */
export function arrowsOnCircles(imports: readonly Import[], nodeOf = folderOf): ArrowOnCircle[] {
  const graph = graphOf(imports, nodeOf);
  return [...graph]
    .flatMap(([from, targets]) =>
      [...targets].flatMap(([to, making]): ArrowOnCircle[] => {
        const back = wayBetween(graph, to, from);
        return back ? [{ arrow: `${from} → ${to}`, circle: [from, ...back], imports: making }] : [];
      }),
    )
    .sort((a, b) => (a.arrow < b.arrow ? -1 : 1));
}

/** Circles in a few lines: what makes each arrow, and the way back. */
export function circleText({ arrow, circle, imports }: ArrowOnCircle): string {
  const [first, ...others] = imports;
  const more = others.length > 0 ? ` and ${others.length} more` : '';
  return `${arrow}, on the circle ${circle.join(' → ')} (${first?.from} imports ${first?.to}${more})`;
}
