/**
 * A project as the text of a `.walewright` file, and back.
 *
 * The text is the same for the same project (fixed key order, two blanks of
 * indent, one line a chart row, a newline at the end), so that versions can be
 * compared line by line.
 */
import type { z } from 'zod';
import { label, parseNeedle } from '../bed/index.ts';
import { gridFromText, gridToText } from '../grid/index.ts';
import type { Gauge, Position, Region } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import { broughtUpToDate } from './migrate.ts';
import type {
  Band,
  ChosenInSize,
  Fill,
  SolvedRule,
  Group,
  Motif,
  PlacementRule,
  Project,
  Size,
  Sizes,
  Underlay,
} from './project.ts';
import { CELL_LETTERS, FILE_FORMAT, FILE_VERSION, projectFileSchema, type ProjectFile } from './schema.ts';

/** The text of a project file. */
export function projectToText(project: Project): string {
  return `${JSON.stringify(projectToFile(project), null, 2)}\n`;
}

/**
 * Reads the text of a project file.
 * Throws `project-not-json`, `project-not-ours`, `project-newer` or
 * `project-invalid` (with the path of the first wrong field).
 */
export function projectFromText(text: string): Project {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    throw problemError('project-not-json', { detail: (error as Error).message });
  }
  if (typeof raw !== 'object' || raw === null || (raw as { format?: unknown }).format !== FILE_FORMAT) {
    throw problemError('project-not-ours', {});
  }
  const version = (raw as { version?: unknown }).version;
  if (typeof version === 'number' && version > FILE_VERSION) {
    throw problemError('project-newer', { version, known: FILE_VERSION });
  }
  const parsed = projectFileSchema.safeParse(broughtUpToDate(raw));
  if (!parsed.success) throw problemError('project-invalid', firstIssue(parsed.error));
  return projectFromFile(parsed.data);
}

/** The plain data of a project, keys in the order of the file. */
export function projectToFile(project: Project): ProjectFile {
  const { piece } = project;
  return {
    format: FILE_FORMAT,
    version: FILE_VERSION,
    name: project.name,
    yarns: project.yarns.map(({ name, colour, tex }) => ({ name, colour, tex })),
    motifs: project.motifs.map(motifToFile),
    piece: {
      name: piece.name,
      shape: shapeToFile(piece.shape),
      oddStitch: piece.oddStitch,
      offset: piece.offset,
      hemRows: piece.hemRows,
      hem: { hasTurningRow: piece.hem.hasTurningRow, gauge: ownGaugeToFile(piece.hem.gauge) },
      parts: piece.parts.map(({ name, rows, isLined, gauge }) => ({
        name,
        rows,
        isLined,
        gauge: ownGaugeToFile(gauge),
      })),
      gauge: gaugeToFile(piece.gauge),
      bed: { needles: piece.bed.needles, pitchMm: piece.bed.pitchMm },
      seamAllowance: { left: piece.seamAllowance.left, right: piece.seamAllowance.right },
      finishedFace: piece.finishedFace,
      isInfant: piece.isInfant,
      isLined: piece.isLined,
      startSide: piece.startSide,
      endNeedleSelection: piece.endNeedleSelection,
      floatLimit: { stitches: piece.floatLimit.stitches, mm: piece.floatLimit.mm },
    },
    sizes: sizesToFile(project.sizes),
    bands: project.bands.map(bandToFile),
    fills: project.fills.map(fillToFile),
  };
}

function sizesToFile({ name, smaller, larger }: Sizes): ProjectFile['sizes'] {
  const sizeToFile = (size: Size) => ({ name: size.name, shape: shapeToFile(size.shape), hemRows: size.hemRows });
  return { name, smaller: smaller.map(sizeToFile), larger: larger.map(sizeToFile) };
}

function gaugeToFile({ stitches, rows }: Gauge): Gauge {
  return { stitches, rows };
}

function ownGaugeToFile(gauge: Gauge | null): Gauge | null {
  return gauge && gaugeToFile(gauge);
}

function positionToFile(position: Position): ProjectFile['bands'][number]['position'] {
  const { kind } = position;
  switch (kind) {
    case 'centred':
      return { kind, section: regionToFile(position.section), oddRow: position.oddRow };
    case 'from-edge':
      return { kind, edge: position.edge, section: regionToFile(position.section), rows: position.rows };
    case 'above-hem':
      return { kind };
    case 'from-row':
      return { kind, row: position.row };
  }
}

function regionToFile<Named extends Region | 'shown'>(region: Named): Named | { part: string } {
  return typeof region === 'string' ? region : { part: region.part };
}

function shapeToFile(shape: Project['piece']['shape']): ProjectFile['piece']['shape'] {
  const { stitches, rows } = shape;
  switch (shape.kind) {
    case 'rectangle':
      return { kind: shape.kind, stitches, rows };
    case 'tapered':
      return { kind: shape.kind, stitches, stitchesAtTop: shape.stitchesAtTop, rows, straightRows: shape.straightRows };
    case 'body': {
      const { stitchesAtWaist, stitchesAtChest, rowsToWaist, rowsToChest } = shape;
      return { kind: shape.kind, stitches, stitchesAtWaist, stitchesAtChest, rowsToWaist, rowsToChest, rows };
    }
    case 'steps':
      return {
        kind: shape.kind,
        stitches,
        rows,
        steps: shape.steps.map(({ row, left, right }) => ({ row, left, right })),
      };
  }
}

function motifToFile(motif: Motif): ProjectFile['motifs'][number] {
  return {
    id: motif.id,
    name: motif.name,
    ground: motif.ground,
    shows: motif.shows,
    isLettering: motif.isLettering,
    underlay: motif.underlay && underlayToFile(motif.underlay),
    rows: gridToText(motif.grid, CELL_LETTERS),
  };
}

function underlayToFile(underlay: Underlay): ProjectFile['motifs'][number]['underlay'] {
  const { picture, left, bottom, columns, rows, opacity, isShown } = underlay;
  return { picture, left, bottom, columns, rows, opacity, isShown };
}

function bandToFile(band: Band): ProjectFile['bands'][number] {
  return {
    groups: band.groups.map(groupToFile),
    unit: band.unit,
    rule: ruleToFile(band.rule),
    judge: band.judge,
    choice: band.choice,
    ...(band.chosenInSizes && { chosenInSizes: band.chosenInSizes.map(chosenToFile) }),
    position: positionToFile(band.position),
    cutCopies: band.cutCopies,
  };
}

function fillToFile(fill: Fill): ProjectFile['fills'][number] {
  const { motif, unit, isMirrored, firstRow, lastRow, border, centre, shift, step, cutCopies } = fill;
  const { left, right } = border;
  return { motif, unit, isMirrored, firstRow, lastRow, border: { left, right }, centre, shift, step, cutCopies };
}

function groupToFile(group: Group): ProjectFile['bands'][number]['groups'][number] {
  const { motif, across, acrossInSizes, up, isMirrored, rise, hasOwnBall } = group;
  const inSizes = acrossInSizes?.map((copies) => ({ size: copies.size, across: copies.across }));
  return { motif, across, ...(inSizes && { acrossInSizes: inSizes }), up, isMirrored, rise, hasOwnBall };
}

function chosenToFile({ size, choice, first }: ChosenInSize) {
  return { size, choice, first: first && first.map(label) };
}

function ruleToFile(rule: PlacementRule): ProjectFile['bands'][number]['rule'] {
  if (rule.kind !== 'by-hand') return solvedToFile(rule);
  const { first, before } = rule;
  const byHand = { kind: rule.kind, first: first.map(label) };
  return before ? { ...byHand, before: { rule: solvedToFile(before.rule), choice: before.choice } } : byHand;
}

function ruleFromFile(rule: ProjectFile['bands'][number]['rule']): PlacementRule {
  if (rule.kind !== 'by-hand') return rule;
  const { first, before } = rule;
  const byHand = { kind: rule.kind, first: first.map(parseNeedle) };
  return before ? { ...byHand, before } : byHand;
}

function solvedToFile(rule: SolvedRule): SolvedRule {
  switch (rule.kind) {
    case 'margins':
    case 'gaps':
      return { kind: rule.kind, stitches: rule.stitches };
    case 'seam':
    case 'even':
      return { kind: rule.kind };
  }
}

function projectFromFile(file: ProjectFile): Project {
  return {
    name: file.name,
    yarns: file.yarns,
    motifs: file.motifs.map(({ id, name, ground, shows, isLettering, underlay, rows }) => ({
      id,
      name,
      grid: gridFromText(rows, CELL_LETTERS),
      ground,
      shows,
      isLettering,
      underlay,
    })),
    piece: file.piece,
    sizes: file.sizes,
    bands: file.bands.map(bandFromFile),
    fills: file.fills,
  };
}

function bandFromFile({ rule, chosenInSizes, ...band }: ProjectFile['bands'][number]): Band {
  const chosen = chosenInSizes?.map((one) => ({ ...one, first: one.first && one.first.map(parseNeedle) }));
  return { ...band, rule: ruleFromFile(rule), ...(chosen && { chosenInSizes: chosen }) };
}

function firstIssue(error: z.ZodError): { path: string; detail: string } {
  const issue = error.issues[0];
  const path =
    issue?.path.map((part) => (typeof part === 'number' ? `[${part + 1}]` : `.${String(part)}`)).join('') ?? '';
  return { path: path.replace(/^\./, ''), detail: issue?.message ?? '' };
}
