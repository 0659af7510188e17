/**
 * Drawings put into the window a little in each frame: to lay out a page of
 * the sheet at once takes a slow processor longer than a frame has.
 */

/** So many elements of all drawings are put in and laid out in a frame at least; and where the processor is fast, at most. */
const LEAST_IN_FRAME = 80;
const MOST_IN_FRAME = 640;
/** And so many at once: the page itself, its paper and its running head, so that a page is never nothing. */
const AT_ONCE = 5;
/** A full frame that was painted within this lets twice as many into the next … */
const SOON_MS = 7;
/** … and one that took this long half as many. */
const LATE_MS = 14;

/** A part that is put into what it stands in; it holds so many elements. */
interface Step {
  readonly into: Element;
  readonly part: Element;
  readonly elements: number;
}

/** Of the drawings that are not whole yet, the first to be begun first. */
const begun: Iterator<Step, undefined, void>[] = [];
let frame: number | null = null;
/** How many the processor was found to lay out in a frame. */
let inFrame = 2 * LEAST_IN_FRAME;

/**
 * Puts a drawing into an empty box, from its beginning on. One that takes the
 * place of another is put in whole, so that what is looked at never goes blank.
 * Returns a function that gives up, and says whether the drawing is whole.
 */
export function drawInSlices(box: Element, drawing: Element): () => boolean {
  if (box.firstChild !== null) {
    box.replaceChildren(drawing);
    return () => true;
  }
  const steps = stepsOf(box, drawing);
  begun.push(steps);
  putIn(steps, AT_ONCE);
  goOn();
  return () => {
    const at = begun.indexOf(steps);
    if (at < 0) return true;
    begun.splice(at, 1);
    // What is there of it is no drawing that another could take the place of.
    box.replaceChildren();
    return false;
  };
}

/** Puts that many elements in, or a few more; gives how many may follow. */
function putIn(steps: Iterator<Step, undefined, void>, most: number): number {
  let left = most;
  while (left > 0) {
    const step = steps.next();
    if (step.done === true) {
      begun.splice(begun.indexOf(steps), 1);
      break;
    }
    step.value.into.append(step.value.part);
    left -= step.value.elements;
  }
  return left;
}

function goOn(): void {
  if (frame !== null || begun.length === 0) return;
  frame = requestAnimationFrame(() => {
    const since = performance.now();
    let left = inFrame;
    while (left > 0 && begun[0]) left = putIn(begun[0], left);
    const isFull = left <= 0;
    // The next task begins once what was put in is laid out and handed over to be painted.
    setTimeout(() => {
      frame = null;
      const took = performance.now() - since;
      if (took >= LATE_MS) inFrame = Math.max(LEAST_IN_FRAME, inFrame / 2);
      else if (isFull && took <= SOON_MS) inFrame = Math.min(MOST_IN_FRAME, inFrame * 2);
      goOn();
    });
  });
}

/** Takes what is too large apart, group by group, and puts it together again in the order in which it stands. */
function* stepsOf(into: Element, whole: Element): Generator<Step, undefined, void> {
  const elements = 1 + whole.getElementsByTagName('*').length;
  const parts = [...whole.children];
  if (elements <= LEAST_IN_FRAME || parts.length < whole.childNodes.length) {
    yield { into, part: whole, elements };
    return;
  }
  whole.replaceChildren();
  yield { into, part: whole, elements: 1 };
  for (const part of parts) yield* stepsOf(whole, part);
}
