/** The table of numbers that a person gives: its bounds are those of the schemas, and forms and command line read them there. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { underlaySchema } from '@shared/motif/model.ts';
import { boundsOf, numberFields, type NumberField, type NumberFieldName } from '@shared/project/index.ts';
import { projectFields } from '@shared/project/model.ts';
import { LEAST_OPACITY } from '@shared/motif/index.ts';
import { words } from '@shared/words/index.ts';
import { field, gauge, wholeNumber } from '../../../src-main/cli/values.ts';
import { numberProps } from '../../../src-renderer/ui/number-props.ts';

/** A schema as the library lets it be read. */
interface Schema {
  readonly _zod: {
    readonly def: {
      readonly type: string;
      readonly shape?: { readonly [name: string]: Schema };
      readonly element?: Schema;
      readonly innerType?: Schema;
      readonly options?: readonly Schema[];
      readonly in?: Schema;
      readonly checks?: readonly {
        readonly _zod: { readonly def: { readonly check: string; readonly value?: number } };
      }[];
    };
  };
}

interface Found {
  readonly path: string;
  readonly least: number | undefined;
  readonly most: number | undefined;
}

/** The numbers of a schema, by where they stand. */
function numbersIn(schema: Schema, path: string): Found[] {
  const { def } = schema._zod;
  if (def.type === 'number') {
    const bound = (check: string) => def.checks?.find(({ _zod }) => _zod.def.check === check)?._zod.def.value;
    return [{ path, least: bound('greater_than'), most: bound('less_than') }];
  }
  const within = [
    ...(def.shape ? Object.entries(def.shape).map(([name, of]) => [of, `${path}.${name}`] as const) : []),
    ...(def.options ?? []).map((of) => [of, path] as const),
    ...[def.element, def.innerType, def.in].flatMap((of) => (of ? [[of, path] as const] : [])),
  ];
  return within.flatMap(([of, at]) => numbersIn(of, at));
}

const found = [
  ...Object.entries(projectFields).flatMap(([name, of]) => numbersIn(of as unknown as Schema, name)),
  ...numbersIn(underlaySchema as unknown as Schema, 'motifs.underlay'),
];

/** Numbers of the schemas that no form has a number field for. */
const WITHOUT_FIELD: { readonly [path: string]: string } = {
  'yarns.count.metres': 'asked by the form of a yarn, in metres or yards',
  'yarns.count.grams': 'asked by the form of a yarn',
  'yarns.count.value': 'asked by the form of a yarn, with the bounds of its system',
  'yarns.count.plies': 'asked by the form of a yarn',
  'yarns.onHand.amount': 'asked by the form of a yarn, in grams, ounces or balls',
  'pieces.loop.width': 'asked by the form of a swatch',
  'pieces.loop.length': 'asked by the form of a swatch',
  'pieces.loop.stitches': 'asked by the form of a swatch',
  'pieces.loop.rows': 'asked by the form of a swatch',
  'pieces.loop.mm': 'asked by the form of a swatch, in cm or inches',
  'pieces.loop.grams': 'asked by the form of a swatch, in grams or ounces',
  mainYarn: 'a yarn is chosen, not its number',
  ...Object.fromEntries(
    ['count.metres', 'count.grams', 'count.value', 'count.plies', 'onHand.amount'].map((path) => [
      `colourways.yarns.${path}`,
      'as that of a yarn',
    ]),
  ),
  'pieces.patterns.colourOrder.stripes.yarns.drawn': 'a yarn is chosen, not its number',
  'pieces.patterns.colourOrder.stripes.yarns.knitted': 'a yarn is chosen, not its number',
  'machine.bed.pitchMm': 'that of the bed, which no form asks for',
  'pieces.perSize.shape.steps.row': 'typed as lines of text',
  'pieces.perSize.shape.steps.left': 'typed as lines of text',
  'pieces.perSize.shape.steps.right': 'typed as lines of text',
  'pieces.patterns.placed.value.choice': 'chosen among the placings that there are',
  'pieces.patterns.placed.all.choice': 'chosen among the placings that there are',
  'pieces.patterns.placed.but.value.choice': 'chosen among the placings that there are',
  'pieces.patterns.placed.all.before': 'remembered, not given',
  'pieces.patterns.placed.but.value.before': 'remembered, not given',
  'pieces.patterns.anchors.byHand.column': 'that of the stitch that is looked at',
  'pieces.patterns.anchors.byHand.row': 'that of the stitch that is looked at',
};
/** A length that a count was given as: typed beside the count, whose bounds it has. */
const isLength = (path: string): boolean => /(Mm|\.lengths\.\w+)$/.test(path);

const gauges = ['pieces.gauge', 'pieces.hem.gauge', 'pieces.sections.gauge'];
const shape = 'pieces.perSize.shape';
const FIELDS: { readonly [Name in NumberFieldName]: readonly string[] } = {
  yarnMargin: ['yarnMargin'],
  knit: ['pieces.knit'],
  stitches: ['stitches', 'stitchesAtTop', 'stitchesAtWaist', 'stitchesAtChest'].map((name) => `${shape}.${name}`),
  rows: [`${shape}.rows`],
  shapedRows: ['straightRows', 'rowsToWaist', 'rowsToChest'].map((name) => `${shape}.${name}`),
  hemRows: ['pieces.perSize.hemRows'],
  sectionRows: ['pieces.perSize.sectionRows.rows'],
  seamAllowance: ['pieces.seamAllowance.left', 'pieces.seamAllowance.right'],
  gaugeStitches: gauges.map((path) => `${path}.stitches`),
  gaugeRows: gauges.map((path) => `${path}.rows`),
  floatStitches: ['pieces.floatLimit.stitches'],
  floatLength: ['pieces.floatLimit.mm'],
  bedNeedles: ['machine.bed.needles'],
  offset: ['pieces.offset'],
  machineRepeat: ['machine.places.repeat'],
  rowsBetween: ['pieces.patterns.position.rows'],
  bandFirstRow: ['pieces.patterns.position.row'],
  ruleStitches: ['pieces.patterns.rule.stitches'],
  anchorsLongest: ['pieces.patterns.anchors.longest'],
  copiesAcross: ['pieces.patterns.groups.across.all', 'pieces.patterns.groups.across.but.value'],
  // So many groups of one copy each.
  singleMotifs: [],
  copiesUp: ['pieces.patterns.groups.up'],
  rise: ['pieces.patterns.groups.rise'],
  stripeRows: ['pieces.patterns.colourOrder.stripes.rows'],
  allOverStartDistance: ['pieces.patterns.position.from.rows', 'pieces.patterns.position.at.rows'],
  allOverEndDistance: ['pieces.patterns.position.to.rows'],
  allOverFirstRow: ['pieces.patterns.position.from.row', 'pieces.patterns.position.at.row'],
  allOverLastRow: ['pieces.patterns.position.to.row'],
  allOverHeight: ['pieces.patterns.position.height'],
  allOverBorder: ['pieces.patterns.border.left', 'pieces.patterns.border.right'],
  allOverShift: ['pieces.patterns.shift'],
  allOverStep: ['pieces.patterns.step'],
  // A chart has its cells as lines, which give its size.
  motifColumns: [],
  motifRows: [],
  underlayTurn: ['motifs.underlay.turn'],
  underlayColumns: ['motifs.underlay.columns'],
  underlayRows: ['motifs.underlay.rows'],
  underlayLeft: ['motifs.underlay.left'],
  underlayBottom: ['motifs.underlay.bottom'],
  underlayStrength: ['motifs.underlay.opacity'],
};

describe('the numbers that a person gives', () => {
  it('are all those of the schemas, each in one field', () => {
    const named = Object.values(FIELDS).flat();
    expect(new Set(named).size).toBe(named.length);
    const asked = new Set(found.map(({ path }) => path).filter((path) => !isLength(path) && !(path in WITHOUT_FIELD)));
    expect([...asked].sort()).toEqual([...named].sort());
  });

  it.each(Object.entries(FIELDS))('have the bounds of their schema: %s', (name, paths) => {
    const entry: NumberField = numberFields[name as NumberFieldName];
    const { least, most } = entry;
    if (name === 'underlayStrength') {
      // In percent; below this the picture would not be seen.
      expect([least, most]).toEqual([100 * LEAST_OPACITY, 100]);
      return;
    }
    for (const path of paths) {
      const bounds = found.filter((one) => one.path === path);
      expect(bounds.length, path).toBeGreaterThan(0);
      for (const one of bounds) expect([one.path, one.least, one.most]).toEqual([path, least, most]);
    }
  });

  it('take 0 besides where it stands for none', () => {
    expect(boundsOf('bedNeedles')).toEqual({ least: 0, most: numberFields.bedNeedles.most });
    expect(boundsOf('copiesUp').least).toBe(1);
  });

  it('have a name each, and a step of undo with a name', () => {
    for (const [name, { change }] of Object.entries(numberFields)) {
      const label = words.numberFields[name as NumberFieldName];
      expect(typeof label === 'function' || /^[A-Z]/.test(label), name).toBe(true);
      expect(words.changes.name(change).length, name).toBeGreaterThan(0);
    }
  });
});

describe('a form', () => {
  const root = resolve(import.meta.dirname, '../../../src-renderer');
  const forms = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.svelte'));
  /** What hands numbers to fields, or reads them as they are typed. */
  const behindForms = ['piece/sizes/lines.ts', 'piece/panel/copies.ts', 'piece/all-over/actions.ts'];
  /** Where numbers are given that are no part of a project: pictures that are read, letters, the band of a ball, how the tube is turned, the copy that is followed; or where what is given is handed on. */
  const ELSEWHERE =
    /^(reading-in|ui|motif\/lettering|piece\/closed)\/|CopiesFields|YarnEditor|piece\/(panel\/(SizeField|LengthField)|sizes\/SizeCell)\.svelte$/;

  it('shows each field with what the table has of it', () => {
    expect(numberProps('floatStitches')).toEqual({ least: 0, most: 1000, step: 1, unit: 'st' });
    expect(numberProps('underlayStrength')).toEqual({ least: 10, most: 100, step: 5, unit: '%' });
    const text = [...forms, ...behindForms].map((file) => readFileSync(join(root, file), 'utf8')).join('\n');
    const isUsed = (name: string): boolean =>
      new RegExp(
        `(numberProps|boundsOf)\\('${name}'\\)|numberFields\\.${name}\\b|(stitches|rows|field): '${name}'`,
      ).test(text);
    const unused = Object.keys(numberFields).filter((name) => !isUsed(name));
    // What is counted of an outline says itself whether it is stitches, rows, or rows that may be none.
    expect(unused).toEqual(['shapedRows']);
  });

  it('has no bounds of its own', () => {
    const own = [...forms, ...behindForms]
      .filter((file) => !ELSEWHERE.test(file))
      .flatMap((file) => {
        const text = readFileSync(join(root, file), 'utf8');
        return [
          ...text.matchAll(/\b(least|most)(=\{|: )-?(\d+|(MOST|FARTHEST)_\w+)|\bMOST_(STITCHES|PIECE_ROWS)\b/g),
        ].map(([of]) => `${file}: ${of}`);
      })
      // What was counted on a swatch is no part of the project.
      // A reading of the row counter goes from 0 to the rows of the piece that is knitted.
      .filter((one) => !one.startsWith('knit/OtherReading.svelte'))
      .filter((one) => !one.startsWith('piece/panel/GaugeForm.svelte'));
    expect(own).toEqual([]);
  });
});

describe('the command line', () => {
  it('reads the same bounds', () => {
    for (const name of ['stitches', 'rows', 'hemRows', 'seamAllowance', 'bandFirstRow'] as const) {
      const { least, most } = numberFields[name];
      expect([field(name)(String(least)), field(name)(String(most))]).toEqual([least, most]);
      expect(() => field(name)(String(most + 1))).toThrow();
      expect(() => field(name)(String(least - 1))).toThrow();
    }
    const { gaugeStitches, gaugeRows } = numberFields;
    expect(gauge(`${gaugeStitches.most}x${gaugeRows.most}`)).toEqual({ stitches: 200, rows: 300 });
    expect(() => gauge(`${gaugeStitches.most + 1}x${gaugeRows.most}`)).toThrow();
    expect(wholeNumber('7', 1, 9)).toBe(7);
  });
});
