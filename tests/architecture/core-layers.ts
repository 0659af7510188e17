/** The layers of `src-shared`, the lowest first. A folder imports from lower layers only. */
export const CORE_LAYERS: readonly (readonly string[])[] = [
  ['problem', 'schema', 'colour', 'length'],
  ['bed', 'grid'],
  ['piece', 'motif'],
  ['pattern'],
  ['project', 'placement'],
  ['picture', 'host'],
  ['reading', 'fabric'],
  ['strands'],
  ['yarn'],
  ['plan'],
  ['check'],
  ['words'],
  ['output'],
];
