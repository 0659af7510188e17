/**
 * Small faults that a change of the code might let in, each of which the tests
 * should see: off by one, sides exchanged, constants changed.
 *
 * A fault is found by the name of the function, method or constant that it is
 * made in and by the text that it replaces, never by file and line, so that it
 * stays while code moves. Where a name or a line changes, it changes here too.
 */
export interface Mutant {
  /** The function, method or constant in `src-shared` that holds the text. */
  readonly in: string;
  /** What stands there once; blanks and line ends count as equal. */
  readonly text: string;
  readonly becomes: string;
}

const REPEAT: readonly Mutant[] = [
  { in: 'blankEdges', text: 'right: width - 1 - right', becomes: 'right: width - right' },
  { in: 'blankEdges', text: 'top: height - 1 - top, bottom', becomes: 'top: bottom, bottom: height - 1 - top' },
  { in: 'smallestPeriod', text: 'period * 2 > lines.length', becomes: 'period * 2 >= lines.length' },
  { in: 'startsAcross', text: 'length > best.length', becomes: 'length >= best.length' },
  { in: 'cyclicPeriod', text: 'length % period === 0 ? period : length', becomes: 'period' },
  { in: 'MOST_SLIPS', text: '0.02', becomes: '0.03' },
  { in: 'rowsOfManyYarns', text: 'bitCount(low) + bitCount(high) > 2', becomes: 'bitCount(low) + bitCount(high) > 3' },
];

const BED: readonly Mutant[] = [
  { in: 'isMirroredOnNeedles', text: "face === 'knit'", becomes: "face === 'purl'" },
  { in: 'columnOfNeedle', text: 'width - 1 - offset', becomes: 'width - offset' },
  { in: 'edgesOf', text: "oddStitch === 'left'", becomes: "oddStitch === 'right'" },
];

const COLOURS: readonly Mutant[] = [
  { in: 'stripeAt', text: 'left < stripe.rows', becomes: 'left <= stripe.rows' },
  { in: 'stripeAt', text: 'row % rowsOfOrder({ stripes })', becomes: 'row % (rowsOfOrder({ stripes }) + 1)' },
  { in: 'recolour', text: 'drawn !== ground', becomes: 'drawn === ground' },
];

const PIECE: readonly Mutant[] = [
  { in: 'outlineFrom', text: 'first -= left', becomes: 'first -= right' },
  { in: 'stepsOfShape', text: 'until: rows - straightRows', becomes: 'until: rows - straightRows - 1' },
  { in: 'evenChanges', text: 'i < changes - longer', becomes: 'i < longer' },
  { in: 'shapeableRows', text: 'hemRows + 2', becomes: 'hemRows + 1' },
  { in: 'facingRows', text: 'Math.floor(hemRows / 2)', becomes: 'Math.ceil(hemRows / 2)' },
  { in: 'sectionsOf', text: 'isLined || section.isLined', becomes: 'isLined && section.isLined' },
  { in: 'lowestRowAt', text: "oddRow === 'below'", becomes: "oddRow === 'above'" },
  { in: 'lowestRowAt', text: 'first + left - rows', becomes: 'first + left - rows - 1' },
  { in: 'removeWaste', text: 'work.join.at + 1', becomes: 'work.join.at' },
  { in: 'scheduleOf', text: 'row, left - shared', becomes: 'row, right - shared' },
  { in: 'heights', text: 'below = end', becomes: 'below += own' },
  { in: 'addSize', text: 'Math.floor((fewer + more) / 2)', becomes: 'Math.ceil((fewer + more) / 2)' },
  {
    in: 'wayMm',
    text: 'Math.max(stitchWidthMm(gaugeAt(gauges, from))',
    becomes: 'Math.min(stitchWidthMm(gaugeAt(gauges, from))',
  },
];

const PLACEMENT: readonly Mutant[] = [
  { in: 'frameOf', text: '(least[index] as number) + blankLeft', becomes: '(least[index] as number) + blankRight' },
  { in: 'seamContinues', text: 'left + right', becomes: 'left + right + 1' },
  { in: 'clearOf', text: 'margins[1] - right', becomes: 'margins[1] - left' },
  { in: 'criteria', text: '-score.margins', becomes: 'score.margins' },
  { in: 'requireRoom', text: 'needed > stitches', becomes: 'needed >= stitches' },
];

const FABRIC: readonly Mutant[] = [
  { in: 'setUpBefore', text: 'firstRow >= 2', becomes: 'firstRow > 2' },
  { in: 'onNeedles', text: 'left: blank.right', becomes: 'left: blank.left' },
  { in: 'READS_WITHOUT', text: '0.25', becomes: '0.3' },
  { in: 'lossesIn', text: 'Math.ceil((run.first', becomes: 'Math.floor((run.first' },
  { in: 'rowKnitter', text: 'origin + (out + 1) * copy.width - 1', becomes: 'origin + (out + 1) * copy.width' },
  {
    in: 'centredOrigin',
    text: '(edges.last - seamAllowance.right) + 1',
    becomes: '(edges.last - seamAllowance.right)',
  },
  { in: 'tierOf', text: 'origin + tier * step', becomes: 'origin - tier * step' },
  { in: 'runOn', text: 'edges.first + border.left', becomes: 'edges.first + border.right' },
  { in: 'knittedEnds', text: '(at(first) + 1) * width', becomes: '(at(first) + 1) * width + 1' },
  { in: 'knittedEnds', text: 'at(last) * width - 1', becomes: 'at(last) * width - 2' },
  { in: 'meetingOn', text: '2 * excess <= period', becomes: '2 * excess < period' },
  { in: 'periodWithNeighbours', text: '[row - 1, row + 1]', becomes: '[row + 1]' },
  { in: 'periodWithNeighbours', text: 'periodOn(place, other)) !== 0', becomes: 'periodOn(place, other)) === 0' },
  { in: 'setChoices', text: 'setFor(work, row, row - 2', becomes: 'setFor(work, row, row - 1' },
];

const STRANDS: readonly Mutant[] = [
  { in: 'waysOn', text: 'isOver && isCutAside(before, toRow)', becomes: 'isCutAside(before, toRow)' },
  { in: 'heldAt', text: 'place - longest - 1', becomes: 'place - longest' },
  { in: 'heldAt', text: '(place - before - 1) ** 2', becomes: '(place - before - 1)' },
  { in: 'longestLoose', text: 'let before = first - 1', becomes: 'let before = first' },
  { in: 'mustHolds', text: 'first + (index + 1) * (longest + 1) - 1', becomes: 'first + (index + 1) * (longest + 1)' },
  { in: 'liftFloats', text: 'needlesIn(found[index - 1]), NO_NEEDLES', becomes: 'NO_NEEDLES, NO_NEEDLES' },
  { in: 'makeRoom', text: 'index - row <= MOST_LIFTED_ANEW', becomes: 'row > index' },
  { in: 'reachesOf', text: 'above ? above.top : isKnittedNext', becomes: 'isKnittedNext' },
  { in: 'looseParts', text: 'index < held.length', becomes: 'index < held.length - 1' },
  { in: 'looseParts', text: 'begin + 1', becomes: 'begin' },
  { in: 'carriageSide', text: 'row % 2 === 1', becomes: 'row % 2 === 0' },
  { in: 'longestWithin', text: 'Math.floor', becomes: 'Math.ceil' },
  { in: 'count', text: 'isOver: length > scale.longest', becomes: 'isOver: length >= scale.longest' },
  { in: 'floatBefore', text: 'column - first > scale.longest', becomes: 'column - first > scale.longest + 1' },
  { in: 'waysOn', text: 'rows = toRow - before', becomes: 'rows = toRow - before - 1' },
  { in: 'nearEnd', text: "row.from === 'left'", becomes: "row.from === 'right'" },
  { in: 'wrapsOn', text: 'first - 1 : last + 1', becomes: 'last + 1 : first - 1' },
  { in: 'coursesByStrand', text: '<= longest(', becomes: '< longest(' },
  { in: 'floatsInOrder', text: 'height(one) - height(other)', becomes: 'height(other) - height(one)' },
  {
    in: 'waysOf',
    text: 'needle: isFromLeft ? run.last : run.first',
    becomes: 'needle: isFromLeft ? run.first : run.last',
  },
  { in: 'barsUpTo', text: 'next, most', becomes: 'most' },
  { in: 'keyOf', text: '${feeders[2]} ', becomes: '' },
  { in: 'rarestFirst', text: 'one.stitches - other.stitches', becomes: 'other.stitches - one.stitches' },
  { in: 'rowsToChange', text: 'keptYarns(row).at(-1)', becomes: 'spareYarns(row).at(-1)' },
  { in: 'joined', text: 'other.first <= last', becomes: 'other.first < last' },
  { in: 'depthInSeam', text: 'edges.first + allowance', becomes: 'edges.first + allowance + 1' },
];

const ANCHORS: readonly Mutant[] = [
  { in: 'isNeeded', text: 'right - left - 1 > longest', becomes: 'right - left - 1 >= longest' },
  { in: 'solve', text: 'this.#settle(solved, row - 2)', becomes: 'this.#settle(solved, row - 1)' },
];

const CHECK: readonly Mutant[] = [
  { in: 'partedByLeft', text: 'severityOf(finding) < 2', becomes: 'severityOf(finding) < 3' },
  { in: 'leftAmong', text: 'flatMap(({ all }) => all)', becomes: 'map(({ finding }) => finding)' },
  { in: 'leaveFinding', text: 'found.kind === each', becomes: 'found.kind !== each' },
  { in: 'keyOf', text: 'JSON.stringify(all)', becomes: 'JSON.stringify(all[0])' },
  { in: 'edgesUnseen', text: 'depth > piece.seamAllowance[side]', becomes: 'depth >= piece.seamAllowance[side]' },
  { in: 'seamOver', text: 'Math.max(...open', becomes: 'Math.min(...open' },
  {
    in: 'longHere',
    text: 'isRowLined && sectionAt(sections, toRow).isLined',
    becomes: 'isRowLined',
  },
  { in: 'longHere', text: 'strand.yarn === yarn', becomes: 'strand.yarn !== yarn' },
  { in: 'tried', text: 'here.after >= here.before', becomes: 'here.after > here.before' },
  { in: 'tried', text: 'then.tally.long >= this.#now.long', becomes: 'false' },
  { in: 'mostEffectiveFirst', text: '|| order(one) - order(other)', becomes: '|| order(other) - order(one)' },
  { in: 'closer', text: 'shifts[index] as number) + half', becomes: 'shifts[index] as number)' },
  { in: 'spansOf', text: 'first = piece.hemRows + 1', becomes: 'first = 1' },
  { in: 'bandsAt', text: 'firstRow <= rows[1]', becomes: 'firstRow < rows[1]' },
  { in: 'anchors', text: 'wishedOf(pattern) <= longest', becomes: 'wishedOf(pattern) < longest' },
];

/** What is taken over from rows that are alike, and from the plan before cells were painted. */
const TAKEN_OVER: readonly Mutant[] = [
  { in: 'layStrands', text: 'known = [];', becomes: 'known = known;' },
  { in: 'layStrands', text: '...like.row, from: carriageSide(row, laying.startSide)', becomes: '...like.row' },
  { in: 'repeatRow', text: 'this.lastRow[strand] = this.row', becomes: 'this.lastRow[strand] = this.row - 1' },
  { in: 'joined', text: 'at > 0 && (strands[at - 1] as Strand).last >= first', becomes: 'at < 0' },
  { in: 'join', text: 'mine.count += other.count', becomes: 'mine.count++' },
  { in: 'touch', text: 'one.first <= other.last', becomes: 'one.first < other.last' },
  { in: 'standsOn', text: 'this.below !== below', becomes: 'this.below === null' },
  { in: 'with', text: 'this.longer?.uppermost !== above', becomes: 'this.longer === null' },
  { in: 'paintedRows', text: 'at < four * 4 + 4', becomes: 'at < four * 4 + 3' },
  { in: 'lineHashesAgain', text: 'add(before.grid, row, -1)', becomes: 'add(grid, row, -1)' },
  { in: 'figureInRows', text: 'row < copy.height) count(row)', becomes: 'row < copy.height - 1) count(row)' },
  { in: 'stretchAround', text: 'while (isBlank(knitted, selecting, last))', becomes: 'while (false)' },
  { in: 'knitEndNeedlesAgain', text: 'endNeedles[row - 1], selecting.main', becomes: 'undefined, selecting.main' },
  { in: 'sincePlan', text: '!isLikeButForCells(piece, made.piece)', becomes: 'false' },
  { in: 'layAgain', text: 'count(old, -1)', becomes: 'count(now, -1)' },
  { in: 'lastRowsAfter', text: 'Math.max(lastRow[strand] as number, row)', becomes: 'lastRow[strand] as number' },
  { in: 'carriesAgain', text: 'left.add(row);', becomes: 'left.delete(row);' },
  { in: 'endsAlike', text: 'last === same.last', becomes: 'true' },
  { in: 'keptOf', text: '> last + 1', becomes: '> last' },
  { in: 'keptOf', text: '< first - 1', becomes: '< first' },
  { in: 'stretchesOf', text: 'stretch && isCovered === isLined', becomes: 'stretch' },
  { in: 'tell', text: 'before?.first === first', becomes: 'before !== null' },
  { in: 'isSameStack', text: 'one.count === other.count', becomes: 'true' },
  { in: 'pickedAgain', text: 'edgesWithEnds(rows[row - 1] as PlanRow)', becomes: 'endNeedlesAt[row - 1] as number' },
  { in: 'pickedAgain', text: 'rows[row.row - 1] === row', becomes: 'true' },
  { in: 'carriesAgain', text: 'changed.length > 0 ?', becomes: 'false ?' },
  { in: 'wrapsAgain', text: 'now || before[row - 1]', becomes: 'now' },
  { in: 'isAsBelow', text: '<= rows.first - height', becomes: '<= rows.first' },
];

const YARN: readonly Mutant[] = [
  { in: 'MUNDEN', text: 'ks: 19.0', becomes: 'ks: 19.5' },
  { in: 'useOf', text: '2 * TAIL_MM', becomes: 'TAIL_MM' },
  { in: 'texFromNe', text: '590.5', becomes: '591' },
  { in: 'texFromWorsted', text: '885.8', becomes: '886.5' },
  { in: 'countIn', text: "system === 'tex' || system === 'denier'", becomes: "system === 'tex'" },
  { in: 'loopsOf', text: 'loop.width * loop.length', becomes: 'loop.width + loop.length - 1' },
  { in: 'loopsOf', text: 'loop.stitches * loop.rows', becomes: 'loop.stitches' },
  { in: 'measured', text: 'SWATCH_SHARE + readShare', becomes: 'readShare' },
  { in: 'GAUGE_SHARE', text: "MUNDEN['fully-relaxed']", becomes: "MUNDEN['wet-relaxed']" },
  { in: 'READ_GRAMS', text: '0.5', becomes: '1' },
  { in: 'finishingOf', text: '(edges / 2)', becomes: 'edges' },
  { in: 'CAST_OFF_WIDTHS', text: 'most: 4', becomes: 'most: 5' },
  { in: 'gaugeAt', text: 'row <= last', becomes: 'row < last' },
];

const LETTERING: readonly Mutant[] = [
  { in: 'setLine', text: 'first.column + first.glyph[1]', becomes: 'first.column' },
  { in: 'setText', text: 'Math.floor(slack / 2)', becomes: 'Math.ceil(slack / 2)' },
];

const RUNNING_ORDER: readonly Mutant[] = [
  { in: 'isSelecting', text: '|| work.isChosenAhead(row + 1)', becomes: '&& work.isChosenAhead(row + 1)' },
  { in: 'firstRowObstacle', text: "chooses !== 'ahead-unseen'", becomes: "chooses === 'by-hand'" },
  { in: 'toPush', text: 'isChosen && !isWanted', becomes: 'isChosen && isWanted' },
  { in: 'waitsAfter', text: 'uses[row - 1]?.get', becomes: 'uses[row]?.get' },
  { in: 'toldApart', text: 'other.yarn !== supply.yarn', becomes: 'other.yarn === supply.yarn' },
  { in: 'toldApart', text: 'waiting.delete(supply)', becomes: 'waiting.add(supply)' },
  { in: 'isBesideOthers', text: 'float.strand !== strand', becomes: 'float.strand === strand' },
  { in: 'lastKnit', text: "from === 'left'", becomes: "from === 'right'" },
  { in: 'fromCarriage', text: "from === 'left'", becomes: "from === 'right'" },
  { in: 'areBeside', text: 'left[1] + 1 === right[0]', becomes: 'left[1] + 2 === right[0]' },
  { in: 'hangHem', text: 'opposite(piece.startSide)', becomes: 'piece.startSide' },
  { in: 'makeEyelets', text: 'needle += 2', becomes: 'needle += 3' },
  { in: 'shapingObstacles', text: 'from !== edge', becomes: 'from === edge' },
  { in: 'needlesBetween', text: 'last + 1', becomes: 'last + 2' },
  { in: 'askInRow', text: 'needle >= first && needle <= last', becomes: 'needle > first && needle <= last' },
  { in: 'endStrands', text: 'work.do(lastRow,', becomes: 'work.do(lastRow - 1,' },
  { in: 'tensionOf', text: 'row === join.at + 1', becomes: 'row === join.at' },
  { in: 'isCarriedUp', text: '<= MOST_CARRIED_UP.rows', becomes: '< MOST_CARRIED_UP.rows' },
  { in: 'LONGEST_STRAND_MM', text: '1500', becomes: '1700' },
  { in: 'wrapsOn', text: 'edges.first + seamAllowance.left', becomes: 'edges.first' },
  {
    in: 'outermostOn',
    text: "chooses === 'ahead-unseen' && row > 1",
    becomes: "chooses !== 'ahead-unseen' && row > 1",
  },
  { in: 'edgesWithEnds', text: 'includes(edges.first)', becomes: 'includes(edges.last)' },
  { in: 'severityOf', text: 'return 2', becomes: 'return 1' },
  { in: 'seenEdges', text: 'last - seamAllowance.right', becomes: 'last - seamAllowance.left' },
];

const KNITTING: readonly Mutant[] = [
  { in: 'stopAt', text: 'rows: to - counter', becomes: 'rows: to - counter - 1' },
  { in: 'makeStops', text: 'carriageAt = opposite(carriageAt)', becomes: 'carriageAt = item.carriageAt' },
  { in: 'bedAt', text: 'selected && showsForward', becomes: 'selected' },
  { in: 'settingsAt', text: 'item.counter >= reading', becomes: 'item.counter > reading' },
  { in: 'endOf', text: "carriageAt === 'left'", becomes: "carriageAt === 'right'" },
  { in: 'chosenBefore', text: 'forward.delete(needle)', becomes: 'forward.add(needle)' },
  { in: 'nextChosen', text: "=== 'pattern' || goesOn", becomes: "=== 'pattern'" },
  { in: 'returningTo', text: 'ticksBelow(place, reading)', becomes: 'ticksBelow(place, reading + 1)' },
  { in: 'placeAfter', text: 'ticksBelow(place, event.to + 1)', becomes: 'ticksBelow(place, event.to)' },
  { in: 'takeOrder', text: 'reading > last', becomes: 'reading >= last' },
  { in: 'differences', text: 'one.carriageAt !== other.carriageAt', becomes: 'one.carriageAt === other.carriageAt' },
  { in: 'canBeFollowed', text: '(item.last - reading) % 2 === 1', becomes: '(item.last - reading) % 2 === 0' },
  { in: 'toldOf', text: 'written.has(sent.id)', becomes: 'false' },
];

const PIECES_AND_SIZES: readonly Mutant[] = [
  { in: 'pieceInSize', text: 'one.size === size', becomes: 'one.size !== size' },
  { in: 'sizesOf', text: 'perSize[index]', becomes: 'perSize[Math.max(0, index - 1)]' },
  { in: 'withFields', text: 'sizeIn(piece.perSize, edit.size)', becomes: '0' },
  { in: 'madeBand', text: 'valueIn(placed, size)', becomes: 'placed.all' },
  { in: 'withValueIn', text: 'each === size ? value', becomes: 'each !== size ? value' },
  { in: 'invertEdit', text: 'const at = placeOf(items, edit.id)', becomes: 'const at = items.length - 1' },
  { in: 'listedAs', text: "{ of: 'piece', piece: id }", becomes: "{ of: 'motif', motif: id }" },
  { in: 'removePiece', text: 'pieces[at + 1] ?? pieces[at - 1]', becomes: 'pieces[at - 1] ?? pieces[at + 1]' },
  { in: 'ofAll', text: '(1 + margin) * knit', becomes: '(1 + margin)' },
  { in: 'WAY', text: 'above: 2', becomes: 'above: 1' },
  { in: 'sizesBeside', text: 'at - 2', becomes: 'at - 1' },
  { in: 'copies', text: "'above' ? more : fewer", becomes: "'above' ? fewer : more" },
];

/** In the order of reading: how lines bend, how light falls, what signs are, and why nothing was found. */
const READING: readonly Mutant[] = [
  { in: 'bulges', text: '-up(at, 0) > MOST_OUT', becomes: 'up(at, 0) > MOST_OUT' },
  { in: 'isShadow', text: 'fallsInside(edge, slopes, field)', becomes: 'true' },
  { in: 'LEAST_EXPLAINED', text: '2.5', becomes: '0.5' },
  { in: 'areParted', text: 'Math.min(these.length', becomes: 'Math.max(these.length' },
  { in: 'areParted', text: '> (PARTED_TIMES', becomes: '> (0.5 * PARTED_TIMES' },
  { in: 'whyNoChart', text: '< LEAST_PAPER', becomes: '< 2 * LEAST_PAPER' },
  { in: 'whyNoChart', text: '(1 - ENDS) * seen.length', becomes: 'seen.length - 1' },
  { in: 'whyNoChart', text: 'range >= LEAST_EDGE', becomes: 'range >= 1' },
  { in: 'whyNoChart', text: 'Math.abs(there - here) / 2', becomes: 'Math.abs(there - here)' },
  { in: 'STEEPEST', text: '0.1', becomes: '0.3' },
];

export const MUTANTS: readonly Mutant[] = [
  ...REPEAT,
  ...BED,
  ...PIECE,
  ...COLOURS,
  ...PLACEMENT,
  ...FABRIC,
  ...TAKEN_OVER,
  ...STRANDS,
  ...ANCHORS,
  ...CHECK,
  ...YARN,
  ...LETTERING,
  ...RUNNING_ORDER,
  ...KNITTING,
  ...PIECES_AND_SIZES,
  ...READING,
];

/** How a mutant is called in the record and on the terminal: what becomes what, and where. */
export function nameOf({ in: where, text, becomes }: Mutant): string {
  return `${where}: ${text} → ${becomes}`;
}
