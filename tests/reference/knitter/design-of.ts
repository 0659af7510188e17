/** What the fabric should be, as `plan --json` says it row by row, in the form in which the knitter notes it. */
import { z } from 'zod';
import { fabricRow, yarnsOf, type Compared } from './fabric.ts';
import { each, labelOf, labelsOf, needle, side, span } from './needles.ts';

const plan = z.object({
  rows: z.array(
    z.object({
      row: z.int().min(1),
      from: side,
      edges: span,
      runs: z.array(z.object({ first: needle, last: needle, yarn: z.string() })),
      contrast: z.array(span),
      wraps: z.array(needle),
    }),
  ),
});

export type Design = Compared;

/**
 * The rows of a plan, each needle with its yarn. Throws where the plan
 * contradicts itself: rows out of turn, needles of a row without a yarn or
 * with two, `contrast` that is not all that is not main.
 */
export function designOf(planJson: unknown): Design {
  const { rows } = plan.parse(planJson);
  const mainYarns = new Set<string>();
  const fabric = rows.map(({ row, from, edges, runs, contrast }, index) => {
    const wrong = (what: string): never => {
      throw new Error(`Row ${row} of the plan: ${what}`);
    };
    if (row !== index + 1) wrong(`stands in place ${index + 1}`);
    if (runs.some(({ first, last }) => first > last)) wrong('a run goes from right to left');
    const yarns = new Map<number, string>();
    for (const run of runs) {
      for (const at of each([run.first, run.last])) {
        if (yarns.has(at)) wrong(`${labelOf(at)} knits twice`);
        yarns.set(at, run.yarn);
      }
    }
    const without = each(edges).filter((at) => !yarns.has(at));
    if (without.length > 0) wrong(`${labelsOf(without)} knit nothing`);
    if (yarns.size !== each(edges).length) wrong('needles beside the piece knit');
    const inContrast = new Set(contrast.flatMap(each));
    for (const [at, yarn] of yarns) if (!inContrast.has(at)) mainYarns.add(yarn);
    if ([...inContrast].some((at) => !yarns.has(at))) wrong('contrast is knitted beside the piece');
    return fabricRow(row, from, yarns);
  });
  if (mainYarns.size > 1) throw new Error(`${[...mainYarns].join(' and ')} are knitted where no contrast is`);
  for (const [index, { contrast }] of rows.entries()) {
    const yarns = yarnsOf(fabric[index] as (typeof fabric)[number]);
    const inMain = contrast.flatMap(each).filter((at) => mainYarns.has(yarns.get(at) as string));
    if (inMain.length > 0) throw new Error(`Row ${index + 1} of the plan: ${labelsOf(inMain)} knit main as contrast`);
  }
  const wraps = rows.flatMap(({ row, wraps: needles }) => needles.map((at) => ({ row, needle: labelOf(at) })));
  return { fabric, wraps };
}
