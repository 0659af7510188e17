/** What version 6 says: which yarn is the ground, once for all motifs. */
import type { fileOfVersion5 } from './version-5.ts';

/** A project file of version 6 of what was made as one of version 5. */
export function fileOfVersion6({ motifs, ...file }: ReturnType<typeof fileOfVersion5>) {
  return {
    ...file,
    version: 6,
    mainYarn: motifs[0]?.ground,
    motifs: motifs.map(({ ground: _, ...motif }) => motif),
  };
}
