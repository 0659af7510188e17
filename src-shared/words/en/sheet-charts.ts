/** The charts on the placement sheet: what each shows, where it stands, and how its pages go together. */
import type { Run, Shows, Side } from '../../bed/index.ts';
import type { CellBox } from '../../grid/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import { rowHeightMm, stitchWidthMm, type Gauge } from '../../piece/index.ts';
import { plain, rich, strong, type Rich } from '../rich.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';

/** The needles of no more groups than this are told with a chart. */
const MOST_GROUPS = 4;

const CARRIAGE = 'L, R: carriage at, before the row.';

/** `rows 2, 6 and 10`; more of them that are as far apart are told by where they end. */
function rowsBegun(starts: readonly number[]): string {
  const [first = 0, second = 0] = starts;
  const step = second - first;
  const isEven = starts.every((row, index) => row === first + index * step);
  if (starts.length === 1) return `row ${first}`;
  if (step === 1 && isEven) return `rows ${first}–${starts.at(-1)}`;
  if (starts.length > 3 && isEven) return `row ${first} and every ${n.rows(step)} from there up to ${starts.at(-1)}`;
  return `rows ${n.list(starts.map(String))}`;
}

export const sheetCharts = {
  heading(name: string, part: CellBox | null, index: number, count: number): Rich {
    if (!part) return plain(`Chart: ${name}`);
    const columns = `columns ${part.column + 1}–${part.column + part.width}`;
    const rows = n.rowSpan(part.row + 1, part.row + part.height);
    return plain(`Chart: ${name}, ${columns}, ${rows} (part ${index + 1} of ${count})`);
  },
  size(width: number, height: number, gauge: Gauge, isRepeat: boolean, unit: LengthUnit): Rich {
    const measures = lengths.across(width * stitchWidthMm(gauge), height * rowHeightMm(gauge), unit);
    return rich`${isRepeat ? 'One repeat' : 'The whole drawing'}: ${strong(n.size(width, height))}, ${measures}. Row 1 at the bottom.`;
  },
  /** Which groups and all-overs it stands in, by their numbers in the tables; few groups with their needles. */
  standsIn(
    groups: readonly { readonly index: number; readonly block: Run }[],
    allOvers: readonly number[],
  ): string | null {
    const said = [
      groups.length === 0
        ? ''
        : groups.length <= MOST_GROUPS
          ? n.list(groups.map(({ index, block }) => `group ${index + 1} (${n.run(block)})`))
          : `groups ${n.spans(groups.map(({ index }) => index + 1))}`,
      allOvers.length === 0
        ? ''
        : `${allOvers.length === 1 ? 'all-over' : 'all-overs'} ${n.spans(allOvers.map((number) => number + 1))}`,
    ].filter((part) => part !== '');
    return said.length === 0 ? null : `It stands in ${n.list(said)}.`;
  },
  /** Other yarns for those of the chart, on rows of the piece; `again`: every so many rows the first stripe comes again. */
  colours(
    stripes: readonly {
      readonly first: number;
      readonly last: number;
      readonly yarns: readonly { readonly drawn: string; readonly knitted: string }[];
    }[],
    again: number | null,
  ): string {
    const said = stripes.map(({ first, last, yarns }) => {
      const other = yarns.map(({ drawn, knitted }) => `${knitted} for ${drawn}`);
      return `${n.rowSpan(first, last)} ${other.length === 0 ? 'as drawn' : n.list(other)}`;
    });
    const after = again === null ? '' : `; the same again every ${n.rows(again)}`;
    return `Colours up the rows: ${said.join('; ')}${after}.`;
  },
  shown: {
    needles: 'As you see it on the needles while you knit.',
    worn: 'As it is seen when worn: the other way round than on the needles.',
  } satisfies { readonly [Way in Shows]: string },
  shownAlike: 'As you see it on the needles, which is how it is seen when worn.',
  /** Stands beside a row: where the carriage is before it. */
  sides: { left: 'L', right: 'R' } satisfies { readonly [At in Side]: string },
  anchors: (many: number): string =>
    `Rings: ${n.count(many, 'anchor stitch', 'anchor stitches')}, as most copies have them, so that floats are short. The row list has all.`,
  blank(left: number, right: number): string | null {
    if (left === 0 && right === 0) return null;
    const parts = [left > 0 ? `${left} at the left` : '', right > 0 ? `${right} at the right` : ''].filter(Boolean);
    return `Hatched: blank columns of the repeat, ${n.list(parts)}.`;
  },
  /** `stands`: the rows it begins on, for each column beside it; each has a counter where it is one place. */
  beside(stands: readonly (readonly number[])[]): string | null {
    const rows = 'At the right: rows of the chart.';
    const counted = stands.every((starts) => starts.length === 1);
    if (stands.length === 0) return null;
    if (!counted) return `${sheetCharts.places.begins(stands)} ${CARRIAGE}`;
    const counter = stands.length === 1 ? 'row numbers of the piece' : 'row numbers of each place it stands in';
    return `At the left: ${counter}. ${rows} ${CARRIAGE}`;
  },
  places: {
    title: (index: number): string => String.fromCharCode('a'.charCodeAt(0) + index),
    begins(stands: readonly (readonly number[])[]): string {
      const [only = []] = stands;
      if (stands.length === 1) return `It begins on ${rowsBegun(only)}.`;
      const each = stands.map(
        (starts, index) => `${sheetCharts.places.title(index)} where it begins on ${rowsBegun(starts)}`,
      );
      return `At the left: ${n.list(each)}.`;
    },
  },
  description: (name: string, part: CellBox): string =>
    `Chart of ${name}, columns ${part.column + 1} to ${part.column + part.width}, rows ${part.row + 1} to ${part.row + part.height}`,
  /** Beside the edge of a part, after an arrow. */
  joins: (page: number): string => `joins page ${page}`,
  lap: 'Beyond a broken line: what the page it joins has too.',
  mapCaption: 'Its pages, as they lie together:',
  map: (name: string, across: number, up: number, firstPage: number, here: number | null): string =>
    `Map of the pages of ${name}: pages ${firstPage} to ${firstPage + across * up - 1}, ${across} across and ${up} up${
      here === null ? '' : `; this is page ${here}`
    }`,
  key: (name: string, isMain: boolean): string => (isMain ? `${name} (main)` : name),
};
