/**
 * What project files of each version may hold, as JSON Schema (draft 2020-12).
 *
 * Written once by the schema that the program had at that version
 * (`z.toJSONSchema`). Files out there are written by them, so they never
 * change.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Version } from './generated/project-file.ts';

/** What is used here of JSON Schema. */
export interface Schema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly minItems?: number;
}

export function schemaOf(version: Version | 8): Schema {
  if (version === 1) return read('version-1.json');
  if (version >= 4) return read(`version-${version}.json`);
  const schema = read('version-3.json');
  // Versions 2 and 3 hold the same; what differs is what is meant.
  return { ...schema, properties: { ...schema.properties, version: { type: 'number', const: version } } };
}

function read(name: string): Schema {
  return JSON.parse(readFileSync(join(import.meta.dirname, 'schemas', name), 'utf8')) as Schema;
}
