/** The text of an SVG file. */
import { problemError } from '@shared/problem/index.ts';

/** Throws `picture-broken` for what is not UTF-8. */
export function svgText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw problemError('picture-broken', { kind: 'SVG', damage: 'encoding' });
  }
}
