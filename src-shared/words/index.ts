/**
 * Every sentence the program says.
 *
 * Computation gives codes and numbers; the functions here turn them into what
 * a knitter would say, for screen, sheet, command line and speech alike. Each
 * file of `en/` covers one subject. Another language is another folder with
 * the same shape: `Words` is the type of the English one.
 */
import { english } from './en/index.ts';

export type Words = typeof english;

/** The words in use. */
export const words: Words = english;

export * from './marked.ts';
export * from './rich.ts';
export type { BrowserReason } from './en/launcher.ts';
export type { ActNames, AtHand } from './en/running-order.ts';
