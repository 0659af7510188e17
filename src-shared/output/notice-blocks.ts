/** What to watch, what would help, and the usual cautions. */
import {
  gatherFindings,
  leftAmong,
  remediesFor,
  remediesTaken,
  WARNING_CODES,
  type Finding,
  type FindingCode,
  type GatheredFinding,
} from '../check/index.ts';
import type { LengthUnit } from '../length/index.ts';
import { bandsOf } from '../pattern/index.ts';
import { runningOrderOf, type Plan } from '../plan/index.ts';
import type { KnitPiece } from '../project/index.ts';
import { plain, strong, words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import { findingWords } from '../words/findings.ts';
import type { Block } from './blocks/block.ts';
import { listBlock, type ListLine } from './blocks/list.ts';
import { headingBlock, paragraphBlock } from './blocks/text.ts';
import { hasMissing, MISSING_MARK } from './font/printable.ts';
import type { SheetFacts } from './sheet-facts.ts';

/** Findings of one kind that are printed one by one, those alike as one; of the rest it is said how many there are, and where. */
const MOST_OF_A_KIND = 12;

/** Findings, warnings first; the remedies that are taken, and those that are still to be had with their effects; what is left as it is. */
export function findingBlocks(
  piece: KnitPiece,
  plan: Plan,
  found: readonly Finding[],
  widthMm: number,
  unit: LengthUnit,
): Block[] {
  if (found.length === 0) return [];
  const taken = remediesTaken(piece, plan).map((remedy): ListLine => ({
    label: sheetWords.findings.doneMark,
    labelTone: 'soft',
    text: plain(findingWords.remedy.taken(remedy)),
    more: [],
  }));
  const { findings } = sheetWords;
  const isLeft = leftAmong(found, plan.patterns, piece.leftAsIs);
  const watched = found.filter((finding) => !isLeft.has(finding));
  const lines = linesOfAll(watched, piece, unit);
  const left = linesOfAll([...isLeft], piece, unit).map((line): ListLine => ({
    ...line,
    label: findings.noteMark,
    labelTone: 'soft',
  }));
  const remedies = remediesFor(piece, plan, watched).map((remedy): ListLine => ({
    label: findings.noteMark,
    labelTone: 'soft',
    text: [strong(`${findingWords.remedy.name(remedy.intent, bandsOf(piece).length > 1)}.`)],
    more: plain(findingWords.remedy.effect(remedy, unit)),
  }));
  return [
    headingBlock(plain(findings.title), widthMm),
    ...(lines.length === 0 ? [] : [listBlock(lines, widthMm)]),
    ...(taken.length === 0 ? [] : [headingBlock(plain(findings.takenTitle), widthMm, 3), listBlock(taken, widthMm)]),
    ...(remedies.length === 0
      ? []
      : [headingBlock(plain(findings.remediesTitle), widthMm, 3), listBlock(remedies, widthMm)]),
    ...(left.length === 0
      ? []
      : [headingBlock(plain(findingWords.leftTitle(left.length)), widthMm, 3), listBlock(left, widthMm)]),
  ];
}

/** Warnings first, else in the order in which they were found. */
function linesOfAll(found: readonly Finding[], piece: KnitPiece, unit: LengthUnit): ListLine[] {
  const codes = [...new Set(found.map(({ code }) => code))];
  codes.sort((a, b) => Number(WARNING_CODES.has(b)) - Number(WARNING_CODES.has(a)));
  return codes.flatMap((code) => {
    return linesOf(
      code,
      found.filter((finding) => finding.code === code),
      piece,
      unit,
    );
  });
}

/** Those alike are told once, with how often and where they come again; of many that differ the longest. */
function linesOf(code: FindingCode, found: readonly Finding[], piece: KnitPiece, unit: LengthUnit): ListLine[] {
  const { findings } = sheetWords;
  const isWarning = WARNING_CODES.has(code);
  const worstFirst = gatherFindings(found).sort((a, b) => longest(b.finding) - longest(a.finding));
  const rest = worstFirst.slice(MOST_OF_A_KIND);
  return worstFirst.slice(0, MOST_OF_A_KIND).map(({ finding, more, rows }, index): ListLine => {
    const isLast = index === MOST_OF_A_KIND - 1 && rest.length > 0;
    const said = [
      more > 0 ? findings.alike(more, rows) : '',
      isLast ? findings.more(placesOf(rest), rowsOf(rest)) : '',
    ];
    return {
      label: isWarning ? findings.warningMark : findings.noteMark,
      labelTone: isWarning ? 'warn' : 'soft',
      text: plain(findingWords.text(finding, { ...piece, unit })),
      more: plain(said.filter((sentence) => sentence !== '').join(' ')),
    };
  });
}

function placesOf(gathered: readonly GatheredFinding[]): number {
  return gathered.reduce((sum, { more }) => sum + more + 1, 0);
}

function rowsOf(gathered: readonly GatheredFinding[]): [first: number, last: number] {
  return [Math.min(...gathered.map(({ rows }) => rows[0])), Math.max(...gathered.map(({ rows }) => rows[1]))];
}

function longest(finding: Finding): number {
  return 'longest' in finding ? finding.longest : 0;
}

/** Cautions about the machine and about infants, and what the mark of a missing character means. */
export function cautionBlocks(facts: SheetFacts, plan: Plan, found: readonly Finding[], widthMm: number): Block[] {
  const { cautions } = sheetWords;
  const said = [findingWords.caution.machine];
  if (hangsHem(facts, plan)) said.push(words.sections.joinCaution);
  const isSaid = found.some(({ code }) => code === 'infant-floats');
  if (facts.piece.isInfant && !isSaid) said.push(findingWords.caution.infant);
  return [
    headingBlock(plain(cautions.title), widthMm),
    listBlock(
      said.map((text) => ({ label: cautions.mark, labelTone: 'warn', text: plain(text), more: [] })),
      widthMm,
    ),
    ...(writtenIn(facts, plan).some(hasMissing)
      ? [paragraphBlock(plain(sheetWords.missingCharacters(MISSING_MARK)), widthMm, { tone: 'soft' })]
      : []),
  ];
}

function hangsHem({ piece }: SheetFacts, plan: Plan): boolean {
  const running = runningOrderOf(piece, plan);
  return (
    running.isKnittable &&
    running.order.some((item) => item.kind === 'stop' && item.acts.some(({ kind }) => kind === 'hang-hem'))
  );
}

/** What people wrote and the sheet prints: names, tensions, notes. */
function writtenIn({ title, notes, piece, size, colourway, sizes, motifs }: SheetFacts, plan: Plan): string[] {
  const yarns = new Set([piece.mainYarn, ...plan.yarn.uses.map(({ yarn }) => yarn)]);
  return [
    title,
    notes,
    piece.name,
    piece.notes,
    ...piece.sections.flatMap(({ name, tension }) => [name, tension]),
    ...Object.values(piece.tension),
    ...(size === null ? [] : sizes.map(({ name }) => name)),
    ...(colourway === null ? [] : [colourway]),
    ...motifs.map(({ name }) => name),
    ...[...yarns].map((yarn) => piece.yarns[yarn]?.name ?? ''),
  ];
}
