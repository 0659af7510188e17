/** What can be wrong with a picture that is taken as a motif, one pixel a cell. */
export interface PictureProblems {
  'picture-unknown-kind': Record<string, never>;
  'picture-empty': Record<string, never>;
  'picture-truncated': { kind: string };
  'picture-broken': { kind: string; damage: PictureDamage };
  'picture-animated': { kind: string };
  'picture-too-large': { width: number; height: number; mostWidth: number; mostHeight: number };
  'picture-too-many-colours': { colours: number; most: number };
  'photo-in-passes': { width: number; height: number; mostMegapixels: number };
  'colour-unknown': { text: string; known: string };
}

/** The part of a picture file that cannot be right. */
export type PictureDamage =
  | 'signature'
  | 'header'
  | 'second-header'
  | 'chunk'
  | 'order'
  | 'checksum'
  | 'palette'
  | 'note'
  | 'pixels'
  | 'drawing'
  | 'encoding';
