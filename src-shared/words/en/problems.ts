/** What went wrong, and what to do about it. */
import type { CornerFault, PictureDamage, Problem, ProblemCode, ProblemFacts, SvgDanger } from '../../problem/index.ts';
import { numbers as n } from './numbers.ts';
import { sections } from './sections.ts';

/** `what` happened and how to `mend` it. */
interface Said {
  readonly what: string;
  readonly mend: string;
}

const damage: Readonly<Record<PictureDamage, string>> = {
  signature: 'its first bytes were changed on the way',
  header: 'its size or kind cannot be read',
  chunk: 'a part of it has no name',
  checksum: 'a part of it does not match its checksum',
  palette: 'a pixel names no colour of its palette',
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

/** A letter that can be read, or the number that Unicode gives one that shows nothing. */
function visible(letter: string): string {
  if (letter === '\t') return 'tab';
  const code = letter.codePointAt(0) ?? 0;
  return /^[\p{C}\p{Z}\p{M}]/u.test(letter) ? `U+${code.toString(16).toUpperCase().padStart(4, '0')}` : letter;
}

const cornerFault: Readonly<Record<CornerFault, string>> = {
  'too-close': 'two of the corners lie on top of each other',
  'in-line': 'three of the corners lie in one line',
  crossed: 'the sides between the corners cross',
  'not-convex': 'one of the corners lies inside the others',
  anticlockwise: 'the corners go round the wrong way, so the chart would be read mirrored',
};

const byCode: { readonly [Code in ProblemCode]: (facts: ProblemFacts[Code]) => Said } = {
  'needle-unknown': ({ text }) => ({
    what: /^[LR]?0+$/i.test(text)
      ? `"${text}" names no needle: needles are numbered from the centre outwards, and there is no needle 0.`
      : `"${text}" names no needle.`,
    mend: 'Write L or R and a number from 1 on, such as L48 or R12.',
  }),
  'needle-not-on-piece': ({ needle, first, last }) => ({
    what: `A group at ${needle} would leave the piece, which stands on ${first}–${last}.`,
    mend: 'Choose first needles that keep every group on the piece.',
  }),
  'groups-wider-than-piece': ({ needed, available, stitches }) => ({
    what:
      available === stitches
        ? `The groups take ${n.stitches(needed)} and the piece has ${stitches}.`
        : `The groups take ${n.stitches(needed)}, but only ${available} of the piece's ${stitches} are there for them.`,
    mend: 'Use fewer copies, fewer groups, or a wider piece.',
  }),
  'groups-overlap': ({ left, right, stitches }) => ({
    what: `Groups ${left} and ${right} overlap by ${n.stitches(stitches)}.`,
    mend: 'Move one of them outwards.',
  }),
  'groups-out-of-order': ({ left, right }) => ({
    what: `Group ${right} lies to the left of group ${left}.`,
    mend: 'Give the first needles from left to right.',
  }),
  'rule-cannot-be-met': ({ rule, given, least, needed, available }) => ({
    what: ruleNotMet(rule, given, least, needed, available),
    mend:
      given < least
        ? `Give ${least} or more, or choose another rule.`
        : rule === 'margins'
          ? 'Give other margins, or choose another rule.'
          : 'Give a smaller gap, use fewer copies, or choose another rule.',
  }),
  'by-hand-count': ({ given, groups }) => ({
    what: `${n.count(given, 'first needle')} for ${n.count(groups, 'group')}.`,
    mend: 'Give one first needle for each group, left to right.',
  }),
  'no-figure': ({ motif }) => ({
    what: `"${motif}" has no figure: every cell is ground, so there is nothing to place.`,
    mend: 'Draw the figure, or choose another colour as the ground.',
  }),
  'motif-taller-than-section': ({ rows, section, available }) => ({
    what: `The motif is ${n.rows(rows)} tall and ${sections.the(section)} has ${available}.`,
    mend: 'Give a first row, a taller section, or fewer copies upwards.',
  }),
  'motif-leaves-section': ({ rows, section, plain, left, edge }) => ({
    what: `With ${n.rows(plain)} ${edge === 'lower' ? 'below' : 'above'} it the motif of ${n.rows(rows)} leaves ${sections.the(section)}, which has ${left} besides.`,
    mend: 'Ask for fewer rows beside it, or make the section taller.',
  }),
  'section-missing': ({ section }) => ({
    what: `${sections.atStart(section)} is where a motif stands, and the piece has no such rows.`,
    mend: 'Choose another section for the motif, or give the piece this one.',
  }),
  'rows-outside-piece': ({ first, last, rows }) => ({
    what: `The pattern would run from row ${first} to row ${last}, but the piece has ${n.rows(rows)}.`,
    mend: 'Start it on a lower row, or make the piece longer.',
  }),
  'bands-overlap': ({ one, other, first, last }) => ({
    what: `Bands ${one} and ${other} want the same needles on ${n.rowSpan(first, last)}.`,
    mend: 'Move one of them up, down or aside.',
  }),
  'fill-overlaps-band': ({ fill, band, first, last }) => ({
    what: `Fill ${fill} and band ${band} want the same needles on ${n.rowSpan(first, last)}.`,
    mend: 'End the fill below the band, begin it above, or keep stitches plain beside it.',
  }),
  'fills-overlap': ({ one, other, first, last }) => ({
    what: `Fills ${one} and ${other} want the same needles on ${n.rowSpan(first, last)}.`,
    mend: 'End one of them below the other, or keep stitches of one plain.',
  }),
  'fill-without-room': ({ fill }) => ({
    what: `The plain edges of fill ${fill} leave no stitch for its pattern.`,
    mend: 'Keep fewer stitches plain.',
  }),
  'fill-rows-turned': ({ fill, first, last }) => ({
    what: `Fill ${fill} would begin on row ${first} and end on row ${last}.`,
    mend: 'Give a last row that is not below the first.',
  }),
  'hem-longer-than-piece': ({ hem, rows }) => ({
    what: `The hem takes ${n.rows(hem)} and the whole piece has ${rows}.`,
    mend: 'Make the hem shorter or the piece longer.',
  }),
  'sections-longer-than-piece': ({ hem, parts, rows }) => ({
    what: `${sections.inAll(hem, parts)}, and the whole piece has ${rows}.`,
    mend: 'Make a section shorter or the piece longer.',
  }),
  'shaping-impossible': ({ changes, rows }) => ({
    what: `${n.count(changes, 'change')} at each edge do not fit in ${n.rows(rows)}.`,
    mend: 'Shape over more rows, or by fewer stitches.',
  }),
  'shaping-outside-piece': ({ row, rows }) => ({
    what: `The shaping goes up to row ${row}, but the piece ends at row ${rows}.`,
    mend: 'Shape on lower rows, or make the piece longer.',
  }),
  'shaping-leaves-nothing': ({ row, taken, before }) => ({
    what: `Row ${row} takes away ${n.stitches(taken)} of ${before}, so nothing is left to knit on.`,
    mend: 'Take away fewer stitches there, or end the piece below that row.',
  }),
  'shaping-too-wide': ({ row, needles, most }) => ({
    what: `With the shaping of row ${row} the piece takes ${n.needles(needles)}; ${most} are the most.`,
    mend: 'Add fewer stitches.',
  }),
  'gauge-absurd': ({ of, count, mm, inTenCm, least, most }) => ({
    what: `${of === 'rows' ? n.rows(count) : n.stitches(count)} on ${n.plain(mm)} mm would be ${n.plain(inTenCm, 2)} in 10 cm; fabric has ${least} to ${most}.`,
    mend: 'Count and measure again; the measure is in mm.',
  }),
  'steps-line-unclear': ({ line }) => ({
    what: `"${line.length > 60 ? `${line.slice(0, 60)}…` : line}" is no shaping of a row.`,
    mend: 'Write it like "row 12: +1 at each edge" or "row 40: -4 at the left".',
  }),
  'steps-row-is-cast-on': ({ row }) => ({
    what: `Row ${row} cannot be shaped: row 1 is the cast-on.`,
    mend: 'Shape from row 2 on.',
  }),
  'steps-row-twice': ({ row }) => ({
    what: `Row ${row} stands on more than one line.`,
    mend: `Write all of row ${row} on one line, such as "row ${row}: -2 at the left, -1 at the right".`,
  }),
  'steps-edge-twice': ({ row, side }) => ({
    what: `Row ${row} shapes the ${side} edge twice.`,
    mend: 'Write each edge once.',
  }),
  'not-a-whole-number': ({ text, least, most }) => ({
    what: `"${text}" is not a whole number from ${least} to ${most}.`,
    mend: 'Write digits only.',
  }),
  'not-a-number': ({ text }) => ({
    what: `"${text}" is not a number above 0.`,
    mend: 'Write digits, with a point if need be.',
  }),
  'option-unknown': ({ option }) => ({
    what: `${option} is no option here.`,
    mend: 'See --help for those there are.',
  }),
  'option-value': ({ option, text, allowed }) => ({
    what: `"${text}" is not a value of ${option}.`,
    mend: `Write ${allowed}.`,
  }),
  'option-missing': ({ option }) => ({ what: `${option} is missing.`, mend: 'Add it; --help shows how.' }),
  'option-empty': ({ option }) => ({
    what: `${option} is given without a value.`,
    mend: 'Write the value after it; --help shows which.',
  }),
  'switch-value': ({ option, text }) => ({
    what: `${option} takes no value, and "${text}" was given.`,
    mend: 'Leave the value out.',
  }),
  'argument-missing': ({ argument }) => ({ what: `${argument} is missing.`, mend: 'Name it; --help shows how.' }),
  'argument-unexpected': ({ text }) => ({
    what: `"${text}" is one name too many.`,
    mend: 'Put names with blanks in quotation marks; --help shows what goes where.',
  }),
  'command-unknown': ({ text }) => ({
    what: `There is no command "${text}".`,
    mend: 'See --help for those there are.',
  }),
  'choice-unknown': ({ given, choices }) => ({
    what: `There is no choice ${given}: ${choices === 1 ? 'there is one' : `there are ${choices}`}.`,
    mend: `Give a number from 1 to ${choices}.`,
  }),
  'colour-unknown': ({ text, known }) => ({
    what: `"${text}" is none of the colours here.`,
    mend: `Write one of ${known}.`,
  }),
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
  'svg-unsafe': ({ danger }) => ({
    what: `The SVG drawing was not opened: it holds ${svgDanger[danger]}.`,
    mend: 'Save it as a plain SVG with nothing but shapes and pictures in it, or as PNG.',
  }),
  'picture-interlaced': ({ depth }) => ({
    what: `The PNG picture is interlaced with ${n.count(depth, 'bit')} a pixel, a kind that is not read.`,
    mend: 'Save it again without interlacing.',
  }),
  'picture-too-large': ({ width, height, mostWidth, mostHeight }) => ({
    what: `The picture is ${width} × ${height} pixels; a motif has at most ${mostWidth} × ${mostHeight} cells.`,
    mend: 'Choose a picture with one pixel for each cell.',
  }),
  'image-too-large': ({ width, height, mostPixels, mostSide }) => ({
    what: `The image would be ${width} × ${height} pixels; at most ${n.plain(mostPixels / 1e6, 0)} million, ${mostSide} a side, are drawn.`,
    mend: 'Choose smaller cells, or write the chart as SVG.',
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
    what: 'This is no PNG, JPEG, WebP, SVG or PBM picture.',
    mend: 'Save the photo or scan as PNG or JPEG.',
  }),
  'photo-only-in-window': ({ kind }) => ({
    what: `${kind} pictures are read in the window, but not from the command line.`,
    mend: 'Read it in the window, or save it as PNG or JPEG.',
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
  'grid-not-found': ({ across, up }) => ({
    what: `No evenly spaced lines or cells were found ${across && up ? 'across or up' : across ? 'across' : 'up'}.`,
    mend: `Put the corners exactly on the corners of the chart, or count and give the ${across && up ? 'columns and rows' : across ? 'columns' : 'rows'} yourself.`,
  }),
  'cells-too-fine': ({ columns, rows, mostColumns, mostRows }) => ({
    what: `${n.columns(columns)} and ${n.rows(rows)} are more than this part of the picture can show: ${mostColumns} and ${mostRows} at most.`,
    mend: 'Check the numbers, or take the picture from nearer or at a higher resolution.',
  }),
  'yarns-out-of-range': ({ given, least, most }) => ({
    what: `${given} is not a number of yarns: a motif has ${least} to ${most}.`,
    mend: 'Give a number within that.',
  }),
  'crop-outside-picture': ({ width, height }) => ({
    what: `The part to be used leaves the picture, which is ${width} × ${height} pixels, or is empty.`,
    mend: 'Choose a part that lies inside.',
  }),
  'letters-missing': ({ letters, font }) => ({
    what: `${font} has no ${letters.split(' ').map(visible).join(' ')}.`,
    mend: 'Leave it out, or choose the other typeface.',
  }),
  'lettering-empty': () => ({ what: 'There are no letters to set.', mend: 'Write a word.' }),
  'project-not-json': ({ detail }) => ({
    what: `The file is not a whole project: it is not valid JSON (${detail}).`,
    mend: 'Open an earlier copy of it.',
  }),
  'project-newer': ({ version, known }) => ({
    what: `The project was written by a newer Walewright (file version ${version}; this one knows ${known}).`,
    mend: 'Open it with the newer program.',
  }),
  'project-invalid': ({ path, detail }) => ({
    what: `The project has a field that cannot be right: ${path || 'the whole file'} (${detail}).`,
    mend: 'Mend that field, or open an earlier copy.',
  }),
  'project-not-ours': () => ({ what: 'This is not a Walewright project.', mend: 'Choose a .walewright file.' }),
  'motif-too-large': ({ width, height, mostWidth, mostHeight }) => ({
    what: `A motif of ${width} × ${height} cells cannot be: it has 1 to ${mostWidth} columns and 1 to ${mostHeight} rows.`,
    mend: 'Give a size within that.',
  }),
  'motif-missing': ({ motif }) => ({
    what: `There is no motif "${motif}" any more.`,
    mend: 'Choose another motif for the group.',
  }),
  'motif-in-use': ({ motif, bands, fills }) => ({
    what: `“${motif}” is knitted in ${n.list([...numbered('band', bands), ...numbered('fill', fills)])} of the piece.`,
    mend: `Choose another motif for ${bands.length > 0 ? 'its groups' : 'the fill'} on the Piece bench first.`,
  }),
  'motif-last': () => ({
    what: 'This is the only motif of the project.',
    mend: 'Add another one first.',
  }),
  'sizes-too-many': ({ most }) => ({
    what: `A project holds at most ${most} sizes.`,
    mend: 'Remove one that is not needed, or start another project.',
  }),
  'size-last': () => ({
    what: 'This is the only size of the project.',
    mend: 'Add another one first.',
  }),
  'size-name-unusable': ({ text, most }) => ({
    what: text.trim() === '' ? 'A size needs a name.' : `“${text}” cannot name a size.`,
    mend: `Give 1 to ${most} letters, without a blank at either end.`,
  }),
  'size-name-taken': ({ name }) => ({
    what: `Another size is called “${name}” already.`,
    mend: 'Give it a name of its own.',
  }),
  'size-unknown': ({ given, known }) => ({
    what: `No size is called “${given}”.`,
    mend: `There ${known.length === 1 ? 'is' : 'are'} ${n.list(known)}.`,
  }),
  'underlays-too-large': ({ mostMegabytes }) => ({
    what: `The pictures to trace would take more than ${mostMegabytes} MB of the file.`,
    mend: 'Remove one that is not needed any more, or take a smaller picture.',
  }),
  'yarns-too-many-in-motif': ({ motif, yarns, most }) => ({
    what: `“${motif}” would be drawn in ${yarns} yarns; ${most} are the most in one motif.`,
    mend: 'Draw with a yarn that it has already, or give the cells of one of its yarns to another first.',
  }),
  'motifs-too-many': ({ most }) => ({
    what: `A project holds at most ${most} motifs.`,
    mend: 'Delete one that is not used, or start another project.',
  }),
  'file-missing': () => ({ what: 'There is no such file or folder.', mend: 'Check the name and the folder.' }),
  'file-is-folder': () => ({ what: 'This is a folder, not a file.', mend: 'Choose a file in it.' }),
  'file-too-large': ({ bytes, most }) => ({
    what: `The file has ${n.plain(bytes / 1e6)} MB; at most ${n.plain(most / 1e6)} MB are read.`,
    mend: 'Choose a smaller one.',
  }),
  'file-not-readable': ({ detail }) => ({
    what: `The file cannot be read (${detail}).`,
    mend: 'Check that you may read it.',
  }),
  'file-changed-elsewhere': () => ({
    what: 'Another program has changed the file since it was opened here.',
    mend: 'Save under another name, or open the file again.',
  }),
  'folder-not-writable': ({ detail }) => ({
    what: `The folder cannot be written to (${detail}). Nothing was changed.`,
    mend: 'Choose another folder.',
  }),
  'disk-full': () => ({
    what: 'The disk is full. The file is as it was before.',
    mend: 'Make room, or save somewhere else; your work is still here.',
  }),
  'file-not-written': ({ detail }) => ({
    what: `The file could not be written (${detail}). It is as it was before.`,
    mend: 'Try again, or save somewhere else.',
  }),
  'request-invalid': ({ method, detail }) => ({
    what: `The request "${method}" was not understood (${detail}).`,
    mend: 'Reload the window; if it comes again, report it.',
  }),
  'request-refused': ({ detail }) => ({
    what: `The request was refused (${detail}).`,
    mend: 'Open the address that the program printed.',
  }),
  'host-unreachable': () => ({
    what: 'The program behind this window does not answer.',
    mend: 'Start it again; do not close this window before your work is saved.',
  }),
  unexpected: ({ detail }) => ({
    what: `Something went wrong inside the program (${detail}).`,
    mend: 'Your work is unchanged. Please report it with what you did.',
  }),
};

/** `bands 1 and 3`, or nothing. */
function numbered(what: string, which: readonly number[]): string[] {
  return which.length === 0 ? [] : [`${what}${which.length === 1 ? '' : 's'} ${n.list(which.map(String))}`];
}

function ruleNotMet(rule: 'margins' | 'gaps', given: number, least: number, needed: number, available: number): string {
  const spaces = `${rule} of ${given}`;
  if (given < least) {
    const harm = rule === 'margins' ? 'would leave the piece' : 'would overlap those of the next group';
    return `With ${spaces} the blank columns at the edge of a group ${harm}.`;
  }
  return needed > available
    ? `With ${spaces} the groups need ${n.stitches(needed)} and have ${available}.`
    : `With ${spaces} one group leaves ${n.stitches(available - needed)} over, and there is no gap to take them.`;
}

function say(problem: Problem): Said {
  return (byCode[problem.code] as (facts: Problem['facts']) => Said)(problem.facts);
}

export const problems = {
  say,
  /** One paragraph: where, what, what to do. */
  sentence(problem: Problem): string {
    const { what, mend } = say(problem);
    const place = problem.where === null || what.startsWith(problem.where) ? '' : `${problem.where}: `;
    return `${place}${what} ${mend}`;
  },
};
