/**
 * A project file of version 5, and edits kept behind work of that version, as
 * version 6 has them: the ground, which stood in each motif and was the same in
 * all, is said once, as the main yarn of the project.
 *
 * What is wrong in a file stays wrong: the schema finds it and says where.
 */
import { each, fieldsOf, listOf, type Fields } from './plain-data.ts';

export function toVersion6({ motifs, ...file }: Fields): Fields {
  const [first] = listOf(motifs);
  const mainYarn = first ? first.ground : 0;
  return {
    ...file,
    mainYarn,
    // Motifs of several grounds were refused: where one differs it stays, and still is.
    motifs: each(motifs, ({ ground, ...motif }) => (ground === mainYarn ? motif : { ...motif, ground })),
  };
}

/**
 * Edits of version 5 in the words of version 6. A step that set the ground set
 * that of one motif after the other: it is one edit of the project.
 */
export function editsOfVersion6(edits: readonly Fields[]): readonly Fields[] {
  let mainYarn: unknown;
  return edits.flatMap((edit) => {
    const { ground, ...to } = fieldsOf(edit.to);
    if (edit.kind === 'insert' && edit.list === 'motifs') return [{ ...edit, item: withoutGround(edit.item) }];
    if (edit.kind !== 'set' || edit.of !== 'motif' || ground === undefined) return [edit];
    const others = Object.keys(to).length === 0 ? [] : [{ ...edit, to }];
    if (ground === mainYarn) return others;
    mainYarn = ground;
    return [{ kind: 'set', of: 'project', to: { mainYarn } }, ...others];
  });
}

function withoutGround(item: unknown): unknown {
  const { ground: _, ...motif } = fieldsOf(item);
  return motif;
}
