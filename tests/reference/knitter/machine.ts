/** The machine as a knitter describes it, and the pictures it has been given to read. */
import { z } from 'zod';
import { needle } from './needles.ts';

export const machine = z.object({
  chooses: z.enum(['ahead-seen', 'ahead-unseen', 'by-hand']),
  /** On fixed places every `repeat` needles are chosen alike, counted from the needle `from` (a label or a position). */
  places: z.union([z.literal('any-needle'), z.object({ repeat: z.int().min(1), from: z.union([needle, z.int()]) })]),
  endNeedles: z.enum(['switch', 'always', 'none']),
  increases: z.enum(['both-edges', 'carriage-side']),
  weights: z.boolean(),
});

export type Machine = z.output<typeof machine>;
export type MachineJson = z.input<typeof machine>;

/** The machine that is assumed where nobody says another. */
export const USUAL_MACHINE: MachineJson = {
  chooses: 'ahead-seen',
  places: 'any-needle',
  endNeedles: 'switch',
  increases: 'both-edges',
  weights: true,
};

/**
 * What the machine reads for one group: in each row of the pattern, the first
 * row first, the columns of a copy that are to knit contrast (0 is the leftmost
 * as the knitter sees the needles, before it is mirrored). All rows are here,
 * repeats upwards too; above the last nothing is asked for.
 */
const picture = z.object({
  motif: z.string(),
  /** Columns of a copy; or of the whole group, where its copies are not alike. */
  width: z.int().min(1),
  rows: z.array(z.array(z.int().min(0))),
  /** An all-over: goes on to both sides over every needle in work. */
  isEverywhere: z.boolean().default(false),
  /** The outermost needles between which it is chosen, where that is not from edge to edge. */
  reach: z.tuple([z.int(), z.int()]).optional(),
});

/** By the pattern's name in `first-needles`; a picture for each of its groups, in that order. */
export const patterns = z.record(z.string(), z.array(picture));

export type Picture = z.output<typeof picture>;
export type Patterns = z.output<typeof patterns>;
export type PatternsJson = z.input<typeof patterns>;
