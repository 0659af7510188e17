/**
 * Has the other benches made ready while the hand rests. The sheet is laid out
 * by its worker: laid out from nothing when the bench is gone to, its first page
 * takes half a second, most of which the worker needs to begin. What is found on
 * the piece is worked out here, step by step.
 */
import type { ProjectAt } from '@shared/project/index.ts';
import type { Session } from '../session/session.ts';
import type { SheetPreview } from '../sheet/preview.ts';
import type { SheetViewModel } from '../sheet/view-model.ts';
import { inSlices } from '../worker/in-slices.ts';

/** What it takes, none of which comes with the page. */
export interface RestParts {
  readonly preview: () => Promise<{ readonly SheetPreview: new () => SheetPreview }>;
  readonly benches: () => Promise<unknown>;
  readonly piece: () => Promise<{ readonly prepareFound: (project: ProjectAt) => Generator<null, void, void> }>;
  /** Where the worker cannot be had, the sheet is not prepared: the window would be busy with it. */
  readonly worker: () => Promise<unknown>;
}

type Looked = Pick<Session, 'current' | 'view' | 'subscribe'>;

/** A hand that goes on to the next stroke, or a person to the next bench, does not rest so long. */
const REST_MS = 1000;

/** Returns a function that stops it. */
export function prepareAtRest(session: Looked, viewModel: SheetViewModel, parts: RestParts): () => void {
  let rest: ReturnType<typeof setTimeout> | undefined;
  let changes = 0;
  const prepare = async (): Promise<void> => {
    const now = changes;
    if (!mayPrepare(session)) return;
    try {
      const [{ prepareFound }] = await Promise.all([parts.piece(), parts.benches()]);
      // What stands in the way is told where the bench asks for the same.
      const prepared = await inSlices(
        () => prepareFound(session.current),
        () => now === changes,
        () => undefined,
      );
      if (prepared === null) return;
      const [{ SheetPreview }] = await Promise.all([parts.preview(), parts.worker()]);
      if (now !== changes) return;
      viewModel.preview ??= new SheetPreview();
      viewModel.preview.show(session.current, viewModel.options, session.view.scope);
    } catch {
      // It is asked for again, and told, when the bench is gone to.
    }
  };
  const changed = (): void => {
    changes++;
    clearTimeout(rest);
    // What is shown is the bench's own to make.
    if (mayPrepare(session)) viewModel.preview?.close();
    rest = setTimeout(() => void prepare(), REST_MS);
  };
  rest = setTimeout(() => void prepare(), REST_MS);
  const stop = session.subscribe(changed);
  return () => {
    stop();
    clearTimeout(rest);
  };
}

/** While one knits the sheet is on paper. */
function mayPrepare({ view }: Looked): boolean {
  return view.bench === 'motif' || view.bench === 'piece';
}
