/** What is wrong with a picture or a photo of a chart. */
import type { PictureDamage } from '../../../picture/index.ts';
import type { ProblemFacts } from '../../../problem/index.ts';
import type { CornerFault, Corners, SvgDanger } from '../../../reading/index.ts';
import { joins } from '../joins.ts';
import { numbers as n } from '../numbers.ts';
import type { ProblemWords } from './problem-words.ts';

const damage: Readonly<Record<PictureDamage, string>> = {
  signature: 'its first bytes were changed on the way',
  header: 'its size or kind cannot be read',
  'second-header': 'it states its size more than once',
  chunk: 'a part of it is of no known kind',
  order: 'its parts stand in the wrong order',
  checksum: 'a part of it does not match its checksum',
  palette: 'a pixel names no colour of its palette',
  note: 'a note in it unpacks to more than any note should',
  pixels: 'its pixels cannot be unpacked',
  drawing: 'it cannot be drawn',
  encoding: 'its text is not in UTF-8',
};

const svgDanger: Readonly<Record<SvgDanger, string>> = {
  script: 'a script',
  handler: 'a script that an event would start',
  foreign: 'a page or a film inside it',
  'document-type': 'definitions of its own (a document type)',
  outside: 'a link to something outside it',
};

/** Ways to join two photos: no more than anybody reads. */
function joinWays(ways: ProblemFacts['charts-meet-openly']['ways']): string[] {
  const named = ways.slice(0, MOST_WAYS).map(joins.way);
  return ways.length > MOST_WAYS ? [...named, `${ways.length - MOST_WAYS} more`] : named;
}
const MOST_WAYS = 6;

const cornerFault: Readonly<Record<CornerFault, string>> = {
  'too-close': 'two of the corners lie on top of each other',
  'in-line': 'three of the corners lie in one line',
  crossed: 'the sides between the corners cross',
  'not-convex': 'one of the corners lies inside the others',
  anticlockwise: 'the corners go round the wrong way, so the chart would be read mirrored',
};

const oneYarn: Readonly<Record<'ink' | 'colours' | 'symbols', string>> = {
  ink: 'No cell is filled in',
  colours: 'All cells have one colour',
  symbols: 'All cells look alike',
};

/** Of a picture of such a size. */
const noChart: Readonly<
  Record<ProblemFacts['chart-not-found']['why'], (size: string) => { what: string; mend: string }>
> = {
  'too-small': (size) => ({
    what: `The picture is ${size} pixels, too small to find a chart in.`,
    mend: 'Take it from nearer or at a higher resolution: 10 pixels for each cell at least.',
  }),
  'too-dark': () => ({
    what: 'No chart was found: the picture is too dark to see one.',
    mend: 'Take it again in daylight, or with a lamp.',
  }),
  blurred: () => ({
    what: 'No chart was found: the picture is blurred, and lines of cells cannot be seen in it.',
    mend: 'Take it again with a steady hand and the chart in focus, or from nearer.',
  }),
  'too-faint': () => ({
    what: 'No chart was found: something comes back evenly across and up, as cells do, but its lines or pencil are too faint to follow.',
    mend: 'Go over them with a darker pencil, or take the picture again from nearer and in more light, or give the corners yourself.',
  }),
  'no-cells': () => ({
    what: 'No chart was found: nothing in the picture comes back evenly across and up, as cells do.',
    mend: 'Take the picture straight from above, with all of the chart in it, or give its corners yourself.',
  }),
};

/** With its corners as they can be given. */
function severalChart({ columns, rows, corners }: { columns: number; rows: number; corners: Corners }): string {
  const written = corners.map(({ x, y }) => `${x.toFixed(0)},${y.toFixed(0)}`).join(',');
  return `one of ${n.columns(columns)} and ${n.rows(rows)} with the corners ${written}`;
}

export const pictures = {
  'picture-unknown-kind': () => ({
    what: 'This is neither a PNG nor a PBM picture.',
    mend: 'Choose a picture with one pixel for each cell, saved as PNG or PBM.',
  }),
  'picture-empty': () => ({ what: 'The file is empty.', mend: 'Choose another file.' }),
  'picture-truncated': ({ kind }) => ({
    what: `The ${kind} picture ends too early; part of it is missing.`,
    mend: 'Copy or save it again.',
  }),
  'picture-broken': ({ kind, damage: part }) => ({
    what: `The ${kind} picture is damaged: ${damage[part]}.`,
    mend: 'Save it again in the program that made it.',
  }),
  'picture-animated': ({ kind }) => ({
    what: `The ${kind} picture moves; which of its pictures is meant cannot be told.`,
    mend: 'Save the one you want as a still picture.',
  }),
  'svg-too-much': () => ({
    what: 'The SVG drawing was not opened: it holds more to draw than a chart does.',
    mend: 'Save it as PNG, and open that.',
  }),
  'svg-unsafe': ({ danger }) => ({
    what: `The SVG drawing was not opened: it holds ${svgDanger[danger]}.`,
    mend: 'Save it as a plain SVG with nothing but shapes and pictures in it, or as PNG.',
  }),
  'picture-interlaced': ({ width, height, mostMegapixels }) => ({
    what: `The PNG picture is interlaced and has ${width} × ${height} pixels; interlaced, at most ${mostMegapixels} million are read.`,
    mend: 'Save it again without interlacing, or smaller.',
  }),
  'picture-too-large': ({ width, height, mostWidth, mostHeight }) => ({
    what: `The picture is ${width} × ${height} pixels; a motif has at most ${mostWidth} × ${mostHeight} cells.`,
    mend: 'Choose a picture with one pixel for each cell.',
  }),
  'image-too-large': ({ width, height, mostPixels, mostSide }) => ({
    what: `The image would be ${width} × ${height} pixels; at most ${n.plain(mostPixels / 1e6, 0)} million, ${mostSide} a side, are drawn.`,
    mend: 'Choose smaller cells, or export the chart as SVG.',
  }),
  'picture-too-many-colours': ({ colours, most }) => ({
    what: `The picture has ${colours > most ? `more than ${most}` : colours} colours.`,
    mend: 'Choose one with a single flat colour for each yarn, without soft edges.',
  }),
  'palette-full': ({ yarns, most }) => ({
    what: `With the yarns of the picture the palette would have ${yarns}; it holds ${most} at most.`,
    mend: 'Take fewer yarns, or remove yarns from the palette that no motif has.',
  }),
  'photo-unknown-kind': () => ({
    what: 'This is no PNG, JPEG, WebP, BMP, SVG or PBM picture.',
    mend: 'Save the photo or scan as PNG or JPEG.',
  }),
  'photo-only-in-window': ({ kind }) => ({
    what: `${kind} pictures are read in the window, but not from the command line.`,
    mend: 'Read it in the window, or save it as PNG or JPEG.',
  }),
  'photo-in-passes': ({ width, height, mostMegapixels }) => ({
    what: `The JPEG picture comes in several passes (progressive) and has ${width} × ${height} pixels; in passes, at most ${mostMegapixels} million of its kind are read.`,
    mend: 'Save it again as an ordinary (baseline) JPEG, or smaller.',
  }),
  'photo-too-large': ({ width, height, mostMegapixels }) => ({
    what: `The picture has ${width} × ${height} pixels, ${n.plain((width * height) / 1e6, 0)} million; at most ${mostMegapixels} million are read.`,
    mend: 'Crop it to the chart, or save it smaller: 20 pixels for each cell are plenty.',
  }),
  'corners-unusable': ({ fault }) => ({
    what: `These cannot be the corners of a chart: ${cornerFault[fault]}.`,
    mend: 'Give them clockwise as you see the chart: top left, top right, bottom right, bottom left.',
  }),
  'corner-outside-picture': ({ corner, x, y, width, height }) => ({
    what: `Corner ${corner} at ${n.plain(x)}, ${n.plain(y)} lies outside the picture, which is ${width} × ${height} pixels.`,
    mend: 'Move it onto the picture.',
  }),
  'one-yarn-only': ({ by }) => ({
    what: `${oneYarn[by]}, as far as can be seen.`,
    mend: 'Say what tells the yarns apart: their colours, ink in the cells, or symbols. Check the corners, and the columns and rows, too.',
  }),
  'chart-not-found': ({ why, width, height }) => noChart[why](`${width} × ${height}`),
  'charts-several': ({ charts }) => ({
    what: `The picture shows ${charts.length} charts: ${n.list(charts.map(severalChart))}.`,
    mend: 'Give the corners of the one that you mean.',
  }),
  'chart-cut-off': ({ sides }) => ({
    what: `The chart goes on beyond the picture: at the ${n.list(sides)}.`,
    mend: 'Take a picture with all of the chart in it and paper around it, or give the corners of the part that is there.',
  }),
  'yarns-open': ({ by, found }) => ({
    what: `The photo leaves open how many yarns there are: ${n.count(found, by === 'colours' ? 'colour' : 'symbol')} could be told apart, but it may be one more or fewer.`,
    mend:
      by === 'colours'
        ? 'Count the colours of the chart, the ground among them, and say how many yarns there are.'
        : 'Count the symbols of the chart, the empty cell among them, and say how many yarns there are.',
  }),
  'grid-not-found': ({ across, up }) => ({
    what: `No evenly spaced lines or cells were found ${across && up ? 'across or up' : across ? 'across' : 'up'}.`,
    mend: `Put the corners exactly on the corners of the chart, or count and give the ${across && up ? 'columns and rows' : across ? 'columns' : 'rows'} yourself.`,
  }),
  'charts-differ-in-size': ({ width, height, otherWidth, otherHeight }) => ({
    what: `One photo shows ${n.size(width, height)}, the other ${n.size(otherWidth, otherHeight)}: neither the stitches nor the rows are as many.`,
    mend: 'Two photos are joined where both show the chart from edge to edge one way. Check their corners, columns and rows.',
  }),
  'charts-meet-nowhere': () => ({
    what: 'Nothing that both photos show is alike enough to join them by.',
    mend: 'Take photos that share some rows, or columns, with figure in them, or say where the second goes on.',
  }),
  'charts-meet-openly': ({ ways }) => ({
    what: `The second photo can go on in ${ways.length} ways: ${n.list(joinWays(ways))}.`,
    mend: `Say which, such as ${ways[0]?.side ?? 'above'}:${ways[0]?.shared ?? 1}.`,
  }),
  'cells-too-fine': ({ columns, rows, mostColumns, mostRows, pixels, leastPixels }) => ({
    what: `${n.columns(columns)} and ${n.rows(rows)} are more than this part of the picture can show: a cell has ${n.plain(pixels)} pixels, and needs ${leastPixels}. ${mostColumns} and ${mostRows} can be shown at most.`,
    mend: 'Check the numbers, or take the picture from nearer or at a higher resolution.',
  }),
  'photo-too-dark': ({ paper, least }) => ({
    what: `The photo is too dark to be read: its paper is at ${n.percent(paper / 255)} of white, and must be at ${n.percent(least / 255)}.`,
    mend: 'Take it again in daylight, or with a lamp.',
  }),
  'photo-flat': ({ contrast, least }) => ({
    what: `Nothing stands out in this part of the photo: light and dark differ by ${n.percent(contrast / 255)}, and must by ${n.percent(least / 255)}.`,
    mend: 'Check the corners. Trace what is drawn with a darker pen, or take the photo again in better light.',
  }),
  'photo-grainy': ({ noise, most }) => ({
    what: `The photo is too grainy to be read: its grain is ${n.percent(noise)} of what is drawn, and must be at most ${n.percent(most)}.`,
    mend: 'Take it again in brighter light.',
  }),
  'photo-blurred': ({ blur, most }) => ({
    what: `The photo is too blurred to be read: edges are smeared over ${n.percent(2 * blur)} of a cell, and may be over ${n.percent(2 * most)}.`,
    mend: 'Take it again with a steady hand and the chart in focus, or from nearer.',
  }),
  'cells-beside-corners': ({ off }) => ({
    what: `The cells that the photo shows do not fit these corners, columns and rows: at one corner they lie ${n.plain(off)} × a cell beside it.`,
    mend: 'Put the corners exactly on the corners of the chart, and check the columns and rows.',
  }),
  'photo-unclear': ({ doubtful, cells }) => ({
    what: `The chart cannot be read well enough: ${doubtful} of ${n.count(cells, 'cell')} would be doubtful.`,
    mend: 'Check the corners, the columns and rows, and what tells the yarns apart; or take the photo again, flat and from nearer.',
  }),
  'yarns-out-of-range': ({ given, least, most }) => ({
    what: `${given} is not a number of yarns: a motif has ${least} to ${most}.`,
    mend: 'Give a number within that.',
  }),
  'crop-outside-picture': ({ width, height }) => ({
    what: `The part to be used leaves the picture, which is ${width} × ${height} pixels, or is empty.`,
    mend: 'Choose a part that lies inside.',
  }),
} satisfies Partial<ProblemWords>;
