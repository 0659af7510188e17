/** Which of the pages in a scrolling list are near the view: those are drawn, and no others. */

/** So far above and below the view a page is near: as far as a key scrolls at once. */
const NEAR = '100% 0px';

/**
 * Puts the indices of pages that come near into `near`, the closest first and
 * each in a task of its own, so that none is held up by drawing several; those
 * that are far again go at once. Returns a function that stops.
 */
export function followNearPages(list: HTMLElement, near: Set<number>): () => void {
  /** How far each of those that come is from the middle of the view. */
  const coming = new Map<number, number>();
  let turn: ReturnType<typeof setTimeout> | undefined;
  for (const index of near) if (index >= list.children.length) near.delete(index);

  const next = (): void => {
    if (turn !== undefined || coming.size === 0) return;
    turn = setTimeout(() => {
      turn = undefined;
      const [closest] = [...coming].sort((one, other) => one[1] - other[1]);
      if (!closest) return;
      coming.delete(closest[0]);
      near.add(closest[0]);
      next();
    });
  };
  const observer = new IntersectionObserver(
    (entries) => {
      const pages = [...list.children];
      for (const { target, isIntersecting, boundingClientRect: box, rootBounds } of entries) {
        const index = pages.indexOf(target);
        coming.delete(index);
        if (!isIntersecting) near.delete(index);
        else if (index >= 0 && !near.has(index)) {
          const middle = rootBounds ? rootBounds.top + rootBounds.height / 2 : 0;
          coming.set(index, Math.abs(box.top + box.height / 2 - middle));
        }
      }
      next();
    },
    { root: list, rootMargin: NEAR },
  );
  for (const page of list.children) observer.observe(page);
  return () => {
    observer.disconnect();
    clearTimeout(turn);
  };
}
