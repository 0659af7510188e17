/** What patterns are called. */
import type { PatternKind, PatternName } from '../../pattern/index.ts';
import { numbers as n } from './numbers.ts';

const KINDS: { readonly [Kind in PatternKind]: string } = { band: 'pattern band', 'all-over': 'all-over' };

export const patterns = {
  /** `pattern band 2`, `all-over 1`. */
  named: ({ kind, number }: PatternName): string => `${KINDS[kind]} ${number + 1}`,
  /** `pattern bands 1 and 3, and all-over 2`. */
  list(names: readonly PatternName[]): string {
    const ofEach = (Object.keys(KINDS) as PatternKind[]).map((kind) => names.filter((name) => name.kind === kind));
    return n.list(
      ofEach.flatMap((alike) => {
        const numbers = n.list(alike.map(({ number }) => String(number + 1)));
        return alike[0] ? [`${KINDS[alike[0].kind]}${alike.length === 1 ? '' : 's'} ${numbers}`] : [];
      }),
    );
  },
};
