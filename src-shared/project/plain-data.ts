/** Plain data of files, before anybody knows what is right in it. */

/** Plain data of a thing, whatever it holds. */
export type Fields = { readonly [field: string]: unknown };

/** A list with its things changed; what is no list stays as it is. */
export function each(list: unknown, edit: (item: Fields, index: number) => Fields): unknown {
  if (!Array.isArray(list)) return list;
  return list.map((item: unknown, index) => edited(item, (fields) => edit(fields, index)));
}

/** A thing changed; what is none stays as it is. */
export function edited(item: unknown, edit: (item: Fields) => Fields): unknown {
  return isFields(item) ? edit(item) : item;
}

/** The fields of a thing; none of what is none. */
export function fieldsOf(value: unknown): Fields {
  return isFields(value) ? value : {};
}

/** The things of a list; none of what is no list. */
export function listOf(value: unknown): readonly Fields[] {
  return Array.isArray(value) ? value.map(fieldsOf) : [];
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null;
}
