/** What the window and the worker that decodes pictures say to each other. */
import type { Outcome } from '@shared/problem/index.ts';
import type { Picture, PictureKind, SvgDrawing } from '@shared/reading/index.ts';
import type { GivenPicture } from '../given.ts';
import type { Reduced } from '../small-canvas.ts';

export type Asked =
  /** What a file holds, and whether it can be a motif. */
  | { readonly kind: 'given'; readonly bytes: Uint8Array<ArrayBuffer>; readonly name: string }
  /** Its pixels. */
  | { readonly kind: 'pixels'; readonly bytes: Uint8Array<ArrayBuffer> };

/** With what {@link reduced} makes of a picture. A drawing is only looked at in the worker: nothing but a document can draw it. */
export type Decoded =
  | ({ readonly kind: Exclude<PictureKind, 'SVG'>; readonly picture: Picture } & Reduced)
  | { readonly kind: 'SVG'; readonly drawing: SvgDrawing };

export type Answers = { readonly given: GivenPicture; readonly pixels: Decoded };

export type FromWorker =
  /** The worker is loaded and begins: from here its time is counted. */
  { readonly kind: 'began' } | { readonly kind: 'ended'; readonly outcome: Outcome<Answers[keyof Answers]> };
