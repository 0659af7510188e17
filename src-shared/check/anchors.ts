/** Findings about the anchors that patterns wish for. */
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';

/** `floats-unbroken`: what no anchor can break, one finding a pattern. */
export function floatsUnbroken({ laid, looseFloats }: Inspected): Finding[] {
  return laid.flatMap(({ asked, placed }, index): Finding[] => {
    if (!asked.anchors) return [];
    const own = looseFloats.flatMap((floats, at) =>
      (floats ?? []).filter(({ pattern }) => pattern === index).map((float) => ({ ...float, row: at + 1 })),
    );
    const [first] = own;
    if (!first) return [];
    const lengthOf = (float: typeof first): number => float.last - float.first + 1;
    const longest = own.reduce((most, float) => (lengthOf(float) > lengthOf(most) ? float : most));
    return [
      {
        code: 'floats-unbroken',
        rows: [first.row, Math.max(...own.map(({ row }) => row))],
        pattern: { kind: placed.kind, number: placed.number },
        wished: asked.anchors.longest,
        needles: { first: longest.first, last: longest.last },
        longest: lengthOf(longest),
        count: own.length,
      },
    ];
  });
}
