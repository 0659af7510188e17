/** What has to lie ready before the first stitch, from what is done later. Of an empty order the yarn alone. */
import type { Act, ActOf, Plan, RunningOrder } from '../../plan/index.ts';
import type { AtHand } from '../../words/index.ts';

export function atHand(plan: Plan, order: RunningOrder): AtHand[] {
  const acts = order.flatMap((item) => (item.kind === 'stop' ? item.acts : []));
  const kinds = new Set(acts.map(({ kind }) => kind));
  const of = <Kind extends Act['kind']>(kind: Kind): ActOf<Kind>[] =>
    acts.filter((act): act is ActOf<Kind> => act.kind === kind);
  const isOpen = of('cast-on').some(({ how }) => how === 'open');
  const ends = new Set(of('finish').map(({ how }) => how));
  const laid = new Set(of('lay').map(({ ball }) => ball));
  const threaded = of('thread').flatMap(({ ball }) => (ball === null ? [] : [ball]));
  const balls = new Set([...laid, ...threaded]).size;
  const strands = new Set(of('strand').map(({ strand }) => strand)).size;
  const moves = (['increase', 'decrease', 'eyelets', 'hang-hem', 'cast-off', 'hook-up'] as const).some((kind) =>
    kinds.has(kind),
  );
  const { uses, margin } = plan.yarn;
  return [
    ...uses.map(({ yarn, role, totalMm, grams }): AtHand => ({
      code: 'yarn',
      yarn,
      role,
      mm: totalMm * (1 + margin),
      grams: grams === null ? null : grams * (1 + margin),
    })),
    ...(balls > 0 ? [{ code: 'balls', count: balls, laid: laid.size } as const] : []),
    ...(strands > 0 ? [{ code: 'strands', count: strands } as const] : []),
    ...(isOpen || ends.has('waste-yarn') ? [{ code: 'waste-yarn' } as const] : []),
    ...(isOpen ? [{ code: 'ravel-cord' } as const] : []),
    ...(ends.has('on-a-thread') ? [{ code: 'thread' } as const] : []),
    ...(moves ? [{ code: 'transfer-tool' } as const] : []),
    ...(kinds.has('latch-up') ? [{ code: 'latch-tool' } as const] : []),
    ...(kinds.has('weights') ? [{ code: 'weights' } as const] : []),
    ...(order.length > 0 ? [{ code: 'sewing-needle' } as const] : []),
  ];
}
