/**
 * What is to be known before the first row, kept up to date without holding up
 * the hand. Of a large piece running order and findings take as long as its
 * plan, and each remedy takes a plan of its own: they come from the worker,
 * once nothing was changed for a moment.
 */
import type { PicturedRemedy } from '@shared/check/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import type { KnitPiece } from '@shared/project/index.ts';
import { WorkerClient, type FoundAhead } from '../worker/index.ts';
import { lookaheadJob } from '../worker/jobs/lookahead.ts';
import { foundAtOnce } from './found-at-once.ts';

export interface Lookahead extends FoundAhead {
  readonly piece: KnitPiece;
  readonly plan: Plan;
  /** What would help with each finding, by its kind, the most effective first; none of it until it is worked out. */
  readonly remedies: ReadonlyMap<string, readonly PicturedRemedy[]>;
}

const DEBOUNCE_MS = 200;

const client = new WorkerClient('lookahead', lookaheadJob);

/** A piece that is looked ahead of, until it is another one. */
export interface LookingAhead {
  /** Has the remedies of a finding worked out, behind those that were asked for before; of one that is not found nothing comes. */
  mend(kind: string): void;
  /** Gives up. */
  stop(): void;
}

/**
 * Calls `done` with what is known at once, and when nothing was asked for in
 * that time with what is known by then, and once more with the remedies of each
 * finding that are asked for; `failed` where it cannot be had. Nothing is said
 * of a remedy that nobody looks at: each takes a plan of its own.
 */
export function lookaheadDebounced(
  piece: KnitPiece,
  plan: Plan,
  done: (ahead: Lookahead) => void,
  failed: (problem: Problem) => void,
): LookingAhead {
  let found: FoundAhead | null = foundAtOnce(piece, plan);
  let remedies: Lookahead['remedies'] = new Map();
  const wanted = new Set<string>();
  let isResting = false;
  let isBusy = false;
  const tell = (): void => {
    if (found) done({ ...found, piece, plan, remedies });
  };
  tell();
  // What a message brings is shown in a task of its own: to take it in is work enough for one.
  const turns: ReturnType<typeof setTimeout>[] = [];
  function next(): void {
    if (isBusy || !isResting) return;
    const [kind] = found ? wanted : [];
    if (found && kind === undefined) return;
    isBusy = true;
    client.ask(piece, kind === undefined ? 'all' : { remediesFor: kind }, {
      part: (part) => {
        if ('kind' in part) remedies = new Map([...remedies, [part.kind, part.remedies]]);
        else found = part;
        turns.push(setTimeout(tell));
      },
      answer: () => {
        isBusy = false;
        if (kind !== undefined) wanted.delete(kind);
        next();
      },
      failed,
    });
  }
  turns.push(
    setTimeout(() => {
      isResting = true;
      next();
    }, DEBOUNCE_MS),
  );
  return {
    mend(kind) {
      if (remedies.has(kind)) return;
      wanted.add(kind);
      next();
    },
    stop() {
      for (const turn of turns) clearTimeout(turn);
      client.stop();
    },
  };
}
