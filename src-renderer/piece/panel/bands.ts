/** Bands and groups that come and go, and what the form of a band is given. */
import type { Slot } from '@shared/bed/index.ts';
import type { PlacedBand } from '@shared/fabric/index.ts';
import type { Band, Group, PlacementRule } from '@shared/pattern/index.ts';
import { startBand } from '@shared/project/index.ts';
import type { Session } from '../../session/session.ts';
import type { Planned } from '../planned.ts';

/** What each part of the form of a band is given. */
export interface BandProps {
  readonly session: Session;
  readonly planned: Planned;
  readonly band: Band;
  /** Which of the project's bands it is. */
  readonly index: number;
}

/** Plain rows between a new band and the one below it. */
const ROWS_BETWEEN = 10;

/**
 * A new band of one copy of a motif: centred on a piece without bands, else
 * above the highest of those that are placed.
 */
export function newBand(motif: string, placed: readonly Pick<PlacedBand, 'lastRow'>[]): Band {
  const band = startBand(motif, [1]);
  if (placed.length === 0) return band;
  const highest = Math.max(...placed.map(({ lastRow }) => lastRow));
  return { ...band, position: { kind: 'from-row', row: highest + 1 + ROWS_BETWEEN } };
}

/** A band with one group more, like its last one; by hand it stands next to that. */
export function withGroup(band: Band, placed: PlacedBand | undefined): Partial<Band> {
  const last = band.groups.at(-1) as Group;
  const end = placed?.choices[placed.taken]?.groups.at(-1)?.block.last;
  return {
    groups: [...band.groups, last],
    rule: withNeedle(band.rule, end === undefined ? null : ((end + 1) as Slot)),
  };
}

/** A band with one group less. */
export function withoutGroup(band: Band, index: number): Partial<Band> {
  const { rule } = band;
  const isOther = (_: unknown, at: number): boolean => at !== index;
  return {
    groups: band.groups.filter(isOther),
    rule: rule.kind === 'by-hand' ? { ...rule, first: rule.first.filter(isOther) } : rule,
  };
}

function withNeedle(rule: PlacementRule, first: Slot | null): PlacementRule {
  return rule.kind === 'by-hand' && first !== null ? { ...rule, first: [...rule.first, first] } : rule;
}
