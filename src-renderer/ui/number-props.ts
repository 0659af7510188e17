/** What a number of the project gives its field: bounds, step and unit. */
import { boundsOf, numberFields, type NumberField, type NumberFieldName } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';

interface NumberProps {
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly unit?: string;
}

export function numberProps(name: NumberFieldName): NumberProps {
  const { step = 1, unit }: NumberField = numberFields[name];
  return { ...boundsOf(name), step, ...(unit && { unit: words.numberUnits[unit] }) };
}
