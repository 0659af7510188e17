/**
 * Drawings put into the window a little in each frame: to lay out a page of
 * the sheet at once takes a slow processor longer than a frame has.
 */

/** So many elements of all drawings are put in and laid out in a frame. */
const MOST_IN_FRAME = 80;
/** And so many at once: the page itself, its paper and its running head, so that a page is never nothing. */
const AT_ONCE = 5;

/** A part that is put into what it stands in; it holds so many elements. */
interface Step {
  readonly into: Element;
  readonly part: Element;
  readonly elements: number;
}

/** Of the drawings that are not whole yet, the first to be begun first. */
const begun: Iterator<Step, undefined, void>[] = [];
let frame: number | null = null;

/**
 * Puts a drawing into an empty box, from its beginning on. One that takes the
 * place of another is put in whole, so that what is looked at never goes blank.
 * Returns a function that gives up.
 */
export function drawInSlices(box: Element, drawing: Element): () => void {
  if (box.firstChild !== null) {
    box.replaceChildren(drawing);
    return () => undefined;
  }
  const steps = stepsOf(box, drawing);
  begun.push(steps);
  putIn(steps, AT_ONCE);
  goOn();
  return () => {
    const at = begun.indexOf(steps);
    if (at >= 0) begun.splice(at, 1);
    // What is there of it is no drawing that another could take the place of.
    if (at >= 0) box.replaceChildren();
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
    frame = null;
    for (let left = MOST_IN_FRAME; left > 0 && begun[0];) left = putIn(begun[0], left);
    goOn();
  });
}

/** Takes what is too large apart, group by group, and puts it together again in the order in which it stands. */
function* stepsOf(into: Element, whole: Element): Generator<Step, undefined, void> {
  const elements = 1 + whole.getElementsByTagName('*').length;
  const parts = [...whole.children];
  if (elements <= MOST_IN_FRAME || parts.length < whole.childNodes.length) {
    yield { into, part: whole, elements };
    return;
  }
  whole.replaceChildren();
  yield { into, part: whole, elements: 1 };
  for (const part of parts) yield* stepsOf(whole, part);
}
