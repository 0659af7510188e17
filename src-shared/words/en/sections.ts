/** Sections up the piece: hem, parts, main part; their gauges, and how a hem is folded and joined. */
import type { LengthUnit } from '../../length/index.ts';
import type { Gauge, Position, Region, SectionName, Turning } from '../../piece/index.ts';
import { capitalised } from '../marked.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

const OWN = { 'hem-back': 'hem facing', 'hem-front': 'hem outside', body: 'main part' } as const;

/** `hem facing`, or the name that the knitter gave it. */
function name(section: SectionName): string {
  return typeof section === 'string' ? OWN[section] : section.named;
}

/** `the hem outside`, `the section "rib"`, `the piece`. */
function the(region: Region): string {
  if (region === 'piece') return 'the piece';
  return typeof region === 'string' ? `the ${OWN[region]}` : `the section "${region.named}"`;
}

export const sections = {
  name,
  the,

  atStart(section: SectionName): string {
    return capitalised(the(section));
  },

  /** `The hem of 20 rows and the sections "rib" (30) and "yoke" (60) take 110 rows`. */
  inAll(hem: number, parts: readonly { readonly name: string; readonly rows: number }[]): string {
    const rows = parts.reduce((sum, part) => sum + part.rows, hem);
    const called = n.list(parts.map((part) => `"${part.name}" (${part.rows})`));
    const named = `${parts.length === 1 ? 'section' : 'sections'} ${called}`;
    const isOne = hem === 0 && parts.length === 1;
    return `${hem === 0 ? `The ${named}` : `The hem of ${n.rows(hem)} and the ${named}`} ${isOne ? 'takes' : 'take'} ${n.rows(rows)}`;
  },

  /** `From the bottom up: hem facing, 10 rows (2.5 cm); …`: names in it, so no marks. Null for a main part alone. */
  up(
    sections: readonly { readonly name: SectionName; readonly rows: number; readonly mm: number }[],
    unit: LengthUnit,
  ): string | null {
    if (sections.length < 2) return null;
    const described = sections.map((one) => `${name(one.name)}, ${n.rows(one.rows)} (${lengths.length(one.mm, unit)})`);
    return `From the bottom up: ${described.join('; ')}.`;
  },

  /** `The hem takes 100 rows, 50 of facing and 50 outside.` Then where it folds, and whether its loops are hung. */
  hem(rows: number, turning: Turning, isHung: boolean): string {
    const hidden = Math.floor(rows / 2);
    if (hidden === 0) return `The hem takes **${n.rows(rows)}**, too few to fold.`;
    const halves = `The hem takes **${n.rows(rows)}**, ${hidden} of facing and ${rows - hidden} outside`;
    const how = { loose: 'knitted looser', eyelets: 'of eyelets' } as const;
    const fold =
      turning === 'none'
        ? `it folds after row **${hidden}**`
        : `row **${hidden}**, the last of the facing, is the turning row, ${how[turning]}, and it folds along it`;
    const join = isHung ? `It is joined after row **${rows}**.` : 'No open loops are hung to join it: sew it down.';
    return `${halves}: ${fold}. ${join}`;
  },

  form: {
    hem: 'Hem',
    turningRow: 'Turning row',
    turnings: {
      none: 'none',
      loose: 'knitted looser',
      eyelets: 'eyelets',
    } satisfies { readonly [Kind in Turning]: string },
    ownGauge: 'Own gauge',
    title: 'Sections above the hem',
    section: (index: number): string => `Section ${index + 1} from the bottom`,
    newName: (number: number): string => `section ${number}`,
    name: 'Name',
    nameTaken: 'Another section is called that.',
    rows: 'Rows',
    isLined: 'This section is lined',
    moveUp: 'Move it up',
    moveDown: 'Move it down',
    remove: 'Remove it',
    added: (called: string, rows: number): string => `${called} added above the hem, ${n.rows(rows)}.`,
  },

  /** Placing a band up and down. */
  position: {
    stands: 'Position',
    kinds: {
      centred: 'centred',
      'from-edge': 'a distance from an edge',
      'above-hem': 'above the hem',
      'from-row': 'from a given row',
    } satisfies { readonly [Kind in Position['kind']]: string },
    centredIn: 'Centred in',
    region: (region: 'shown' | Region): string =>
      region === 'shown' ? 'the hem outside, or the main part' : region === 'piece' ? 'the whole piece' : name(region),
    oddRow: 'Odd row',
    oddRows: { below: 'below', above: 'above' },
    from: 'Measured from the',
    edges: { lower: 'lower edge', upper: 'upper edge' },
    of: 'Edge of',
    rowsBetween: 'Plain rows between',
    firstRow: 'First row',
  },

  joinCaution:
    'While you hang the hem, fingers are close to the hooks: park the carriage beyond the last needle, and lift each loop with the transfer tool.',

  /** `hem 26 stitches and 36 rows; rib 30 stitches and 44 rows`. A null name is the hem. */
  gauges(own: readonly { readonly part: string | null; readonly gauge: Gauge }[], unit: LengthUnit): string {
    return own.map(({ part, gauge }) => `${part ?? 'hem'} ${lengths.gaugeCounts(gauge, unit)}`).join('; ');
  },
};
