/**
 * The sheet of a whole garment in one size: a first page of what all pieces
 * take together, then the sheet of each piece, which begins a page and has
 * numbers of its own, so that it can be laid beside the machine by itself.
 */
import { words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import { pour, type Frame } from './blocks/pour.ts';
import { garmentBlocks } from './garment-blocks.ts';
import type { SheetDocument, SheetPage } from './model.ts';
import { pageFrame, pageWidthMm } from './orientation.ts';
import { PAPER } from './paper.ts';
import type { PlannedPiece } from './planned-piece.ts';
import { finishedPages, type LaidPage } from './finished-pages.ts';
import { placementSheet, type SheetOptions } from './placement-sheet.ts';

/** Pages that go together, laid out when they are asked for. */
export type SheetPart = () => readonly SheetPage[];

/** The sheet part by part: of several pieces that of all together, then that of each. */
export function garmentParts(pieces: readonly PlannedPiece[], options: SheetOptions): readonly SheetPart[] {
  const each = pieces.map(({ facts, plan }): SheetPart => () => {
    const { pages } = placementSheet(facts, plan, options);
    const called = words.knitting.piece(facts.piece, facts.size);
    return pages.map((page) => ({ ...page, title: sheetWords.pageOf(page.title, called) }));
  });
  return pieces.length > 1 ? [() => firstPages(pieces, options), ...each] : each;
}

/** All of it. */
export function garmentSheet(pieces: readonly PlannedPiece[], options: SheetOptions): SheetDocument {
  return {
    title: sheetWords.garment.title(pieces[0]?.facts.title ?? ''),
    subject: sheetWords.subject,
    language: 'en',
    paper: options.paper,
    date: options.date,
    pages: garmentParts(pieces, options).flatMap((part) => part()),
  };
}

function firstPages(pieces: readonly PlannedPiece[], { paper, date, unit = 'cm' }: SheetOptions): SheetPage[] {
  const size = PAPER[paper];
  const laid: LaidPage[] = [];
  const addPage = (): Frame => {
    laid.push({ size, elements: [] });
    return pageFrame(size, laid.length - 1);
  };
  pour(
    garmentBlocks(pieces, pageWidthMm(size), unit),
    { frame: addPage(), usedMm: 0 },
    addPage,
    (page, elements) => void laid[page]?.elements.push(...elements),
  );
  const [facts] = pieces.map((piece) => piece.facts);
  const called = { project: facts?.title ?? '', piece: sheetWords.garment.pieces, size: facts?.size ?? null };
  return finishedPages(called, laid, date).map((page) => ({
    ...page,
    title: sheetWords.pageOf(page.title, words.knitting.piece({ name: called.piece }, called.size)),
  }));
}
