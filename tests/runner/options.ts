/** What `npm test` is asked to do. */
import { parseArgs } from 'node:util';

export const PARTS = ['lint', 'types', 'recipes', 'unit', 'property', 'reference', 'faults', 'fuzz', 'e2e'] as const;
export type Part = (typeof PARTS)[number];

export const USAGE = `npm test -- [options]

  --only PART      runs a part alone: ${PARTS.join(', ')}; more than one with commas
  --repeat N       runs everything that is asked for N times
  --busy           keeps every core busy beside it, as a loaded machine would
  --shuffle[=SEED] runs tests in another order, the same one for the same seed
  --alone          runs each end-to-end file in a run of its own`;

export interface Options {
  readonly parts: readonly Part[];
  readonly repeat: number;
  readonly isBusy: boolean;
  /** Null: in the order of files and lines. */
  readonly seed: number | null;
  readonly isAlone: boolean;
}

/** The options, or what is wrong with them in a sentence. `seed` is taken where one is asked for but not named. */
export function optionsOf(args: readonly string[], seed: number): Options | string {
  // An option whose value may be left out is not known to parseArgs.
  const whole = args.map((arg) => (arg === '--shuffle' ? `--shuffle=${seed}` : arg));
  let values: { only?: string[]; repeat?: string; busy?: boolean; shuffle?: string; alone?: boolean };
  try {
    ({ values } = parseArgs({
      args: whole,
      options: {
        only: { type: 'string', multiple: true },
        repeat: { type: 'string' },
        busy: { type: 'boolean' },
        shuffle: { type: 'string' },
        alone: { type: 'boolean' },
      },
    }));
  } catch (error) {
    return (error as Error).message;
  }
  const asked = (values.only ?? []).flatMap((list) => list.split(',')).map((part) => part.trim());
  const unknown = asked.find((part) => !PARTS.some((known) => known === part));
  if (unknown !== undefined) return `There is no part "${unknown}".`;
  const repeat = wholeNumber(values.repeat ?? '1', 1);
  if (repeat === null) return `--repeat takes a whole number from 1, not "${values.repeat}".`;
  const shuffle = values.shuffle === undefined ? null : wholeNumber(values.shuffle, 0);
  if (values.shuffle !== undefined && shuffle === null) {
    return `--shuffle takes a whole number from 0, not "${values.shuffle}".`;
  }
  return {
    parts: asked.length === 0 ? PARTS : PARTS.filter((part) => asked.includes(part)),
    repeat,
    isBusy: values.busy ?? false,
    seed: shuffle,
    isAlone: values.alone ?? false,
  };
}

function wholeNumber(text: string, least: number): number | null {
  const number = /^\d{1,9}$/.test(text) ? Number(text) : -1;
  return number >= least ? number : null;
}
