/** What the host calls the pictures that it was given: each is given once while it is in use. */
import type { PictureHashes } from '@shared/project/index.ts';

export class PictureNames {
  #known = new Map<string, string>();

  /**
   * Of these pictures, but for those that `give` has no name for. One at a time,
   * so that the page goes on between two of them.
   */
  async of(pictures: readonly string[], give: (picture: string) => Promise<string | null>): Promise<PictureHashes> {
    const names = new Map<string, string>();
    for (const picture of pictures) {
      const name = names.get(picture) ?? this.#known.get(picture) ?? (await give(picture));
      if (name !== null) names.set(picture, name);
    }
    this.#known = names;
    return names;
  }
}
