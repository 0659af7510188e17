/**
 * From the options of `place` and `plan` to a project.
 *
 * Around a motif the options describe the whole piece. A project has its own
 * piece and placing; options given go before them, those about placing in its
 * first band.
 */
import { START_BED, type Machine } from '@shared/bed/index.ts';
import { fitted, fittedPlace, type Piece } from '@shared/piece/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { bandsOf, repositioned, type Band, type Pattern } from '@shared/pattern/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { START_PIECE, START_PLACE, START_SIZE, startBand, startGroup, type Workpiece } from '@shared/project/index.ts';
import type { Args } from './args.ts';
import type { NamedAt } from './motif-argument.ts';
import * as read from './values.ts';

const wholeStitches = read.field('stitches');
const wholeRows = read.field('rows');

/**
 * One motif on a rectangle that the options describe. Its rows end with the
 * hem, or with the motif, unless given. Throws `option-missing` without
 * `--stitches` or `--copies`, and what the values throw.
 */
export function projectOfMotif(named: NamedAt, args: Args): Workpiece {
  const motif = withShows(named.motif, args);
  const stitches = read.needed(args, 'stitches', wholeStitches);
  const copies = read.needed(args, 'copies', read.copies);
  const piece: Piece = {
    ...START_PIECE,
    finishedFace: named.project.piece.finishedFace,
    ...pieceOptions(args),
  };
  const band = withOwnBalls({ ...startBand(motif.id, copies), ...bandOptions(args) }, args);
  const position: Band['position'] =
    args.values.has('first-row') || piece.hemRows > 0 ? band.position : { kind: 'from-row', row: 1 };
  const lastOfMotif = (position.kind === 'from-row' ? position.row : 1) + motif.grid.height - 1;
  const rows = read.value(args, 'rows', wholeRows) ?? (piece.hemRows > 0 ? piece.hemRows : lastOfMotif);
  return {
    name: named.project.name,
    notes: named.project.notes,
    machine: machineWith(args, { ...named.project.machine, bed: { ...START_BED, needles: null } }),
    yarnMargin: named.project.yarnMargin,
    yarns: named.project.yarns,
    mainYarn: named.project.mainYarn,
    colourways: named.project.colourways,
    motifs: [motif],
    piece: { ...piece, shape: { kind: 'rectangle', stitches, rows } },
    knit: 1,
    sizes: [START_SIZE],
    at: START_PLACE,
    patterns: [mendingAsked(args)({ ...band, position })],
  };
}

/** A project with the given options in front of its own. */
export function projectWithOptions(named: NamedAt, args: Args): Workpiece {
  const { whole: _, ...project } = named.project;
  const { piece } = project;
  const stitches = read.value(args, 'stitches', wholeStitches);
  const rows = read.value(args, 'rows', wholeRows);
  const copies = read.value(args, 'copies', read.copies);
  const shape = { ...piece.shape, ...defined({ stitches, rows }) };
  const options = bandOptions(args);
  const [first] = bandsOf(project);
  // A hem moves a band that is there; it asks for none.
  const { position: _position, ...ofBand } = options;
  const isBandNew =
    copies !== undefined ||
    args.switches.has('own-balls') ||
    args.values.has('first-row') ||
    Object.keys(ofBand).length > 0;
  const own = first ?? startBand(named.motif.id, [1]);
  const groups = copies ? regrouped(own, copies) : own.groups;
  const band = withOwnBalls({ ...own, groups, ...options }, args);
  const mended = mendingAsked(args);
  const changed = fitted(piece, { ...piece, ...pieceOptions(args), shape });
  return {
    ...project,
    machine: machineWith(args, project.machine),
    motifs: project.motifs.map((motif) => withShows(motif, args)),
    piece: changed,
    patterns: [...(!first && isBandNew ? [band] : []), ...project.patterns].map((pattern) =>
      repositioned(mended(pattern === first ? band : pattern), (place) => fittedPlace(piece, changed, place, place)),
    ),
  };
}

/** Options about the piece that were given, its stitches and rows apart. */
function pieceOptions(args: Args): Partial<Piece> {
  const seam = read.value(args, 'seam-allowance', read.field('seamAllowance'));
  const limit = read.value(args, 'float-limit', read.field('floatStitches'));
  return defined<Piece>({
    hemRows: read.value(args, 'hem', read.field('hemRows')),
    gauge: read.value(args, 'gauge', read.gauge),
    seamAllowance: seam === undefined ? undefined : { left: seam, right: seam },
    finishedFace: read.value(args, 'finished-face', read.finishedFace),
    begins: read.value(args, 'begins', read.begins),
    ends: read.value(args, 'ends', read.ends),
    startSide: read.value(args, 'start-side', read.side),
    floatLimit: limit === undefined ? undefined : { stitches: limit, mm: null },
  });
}

/** The machine with what the options say of it. */
function machineWith(args: Args, machine: Machine): Machine {
  const needles = read.value(args, 'bed', read.field('bedNeedles'));
  return {
    ...machine,
    ...read.value(args, 'machine', read.machine),
    ...(needles !== undefined && { bed: { ...START_BED, needles } }),
  };
}

/** Options about placing that were given, the copies apart. */
function bandOptions(args: Args): Partial<Band> {
  const choice = read.value(args, 'choice', wholeStitches);
  const row = read.value(args, 'first-row', read.field('bandFirstRow'));
  const isHemNew = args.values.has('hem');
  const endNeedles = read.value(args, 'end-needles', read.endNeedles);
  return defined<Band>({
    unit: args.switches.has('whole') ? 'whole' : undefined,
    rule: read.value(args, 'rule', read.rule),
    judge: read.value(args, 'even-out', read.evenOut),
    choice: choice === undefined ? undefined : choice - 1,
    endNeedles: endNeedles === undefined ? undefined : endNeedles === 'on',
    position:
      row !== undefined
        ? { kind: 'from-row', row }
        : isHemNew
          ? { kind: 'centred', section: 'shown', oddRow: 'below' }
          : undefined,
  });
}

function withShows(motif: Motif, args: Args): Motif {
  return { ...motif, ...defined<Motif>({ shows: read.value(args, 'shows', read.shows) }) };
}

/** Groups of the first group's motif, with other numbers of copies across. */
function regrouped(band: Band, copies: readonly number[]): Band['groups'] {
  const [{ motif, up, hasOwnBall }] = band.groups as [Band['groups'][number]];
  return copies.map((across) => ({ ...startGroup(motif, across), up, hasOwnBall }));
}

function withOwnBalls(band: Band, args: Args): Band {
  if (!args.switches.has('own-balls')) return band;
  return { ...band, groups: band.groups.map((group) => ({ ...group, hasOwnBall: true })) };
}

/** A pattern with what the options say of its long floats, long carries and anchors. Throws `option-missing`. */
function mendingAsked(args: Args): <P extends Pattern>(pattern: P) => P {
  const given = defined<Pattern>({
    longFloats: read.value(args, 'long-floats', read.longFloats),
    longCarries: read.value(args, 'long-carries', read.longCarries),
  });
  const longest = read.value(args, 'anchors', read.anchors);
  const isBehind = args.switches.has('anchors-behind');
  if (isBehind && !longest) throw problemError('option-missing', { option: '--anchors' }, '--anchors-behind');
  return (pattern) => {
    if (longest === undefined) return { ...pattern, ...given };
    if (longest === 0) return { ...pattern, ...given, anchors: null };
    const { isBehindFigure = false, byHand = [] } = pattern.anchors ?? {};
    return { ...pattern, ...given, anchors: { longest, isBehindFigure: isBehind || isBehindFigure, byHand } };
  };
}

/** Without the fields that are undefined. */
function defined<T extends object>(fields: { [K in keyof T]?: T[K] | undefined }): Partial<T> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;
}
