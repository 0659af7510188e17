/** Bands and groups that come and go, and what the form of a band is given. */
import type { Slot } from '@shared/bed/index.ts';
import type { PlacedBand } from '@shared/fabric/index.ts';
import { bandsOf, type Band, type Group, type PlacementRule } from '@shared/pattern/index.ts';
import { changeOf, insertPattern, removePattern, startBand, type ProjectAt } from '@shared/project/index.ts';
import type { OnChange } from '../../session/callbacks.ts';
import { newId } from '../../session/new-id.ts';
import type { Session } from '../../session/session.ts';
import { plannedOf, type Planned } from '../planned.ts';

/** What each part of the form of a band is given. */
export interface BandProps {
  readonly project: ProjectAt;
  readonly planned: Planned;
  readonly band: Band;
  /** Which of the project's bands it is. */
  readonly index: number;
  readonly onchange: OnChange;
}

/** The bench as adding and removing see it. */
export interface ChosenBand {
  /** The band in the form. */
  band: number;
}

/** Adds a band with the motif at hand and takes it into the form. */
export function addBand(session: Session, chosen: ChosenBand): void {
  const { current: project } = session;
  const band = newBand(session.motifId, bandsOf(plannedOf(project).plan));
  session.change(changeOf('add-band', insertPattern(project, newId(), band)));
  chosen.band = bandsOf(session.current).length - 1;
}

/** Removes the band in the form, and takes the one before it there. */
export function removeBand(session: Session, chosen: ChosenBand): void {
  const index = chosen.band;
  session.change(changeOf('remove-band', removePattern(session.current, 'band', index)));
  chosen.band = Math.max(0, index - 1);
}

/** Plain rows between a new band and the one below it. */
const ROWS_BETWEEN = 10;

/**
 * A new band of one copy of a motif: centred on a piece without bands, else
 * above the highest of those that are placed.
 */
function newBand(motif: string, placed: readonly Pick<PlacedBand, 'lastRow'>[]): Band {
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
