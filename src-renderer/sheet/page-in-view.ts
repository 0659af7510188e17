/** Which of the pages in a scrolling list is mostly in view. */

/** Calls `tell` with the index whenever it may have changed; returns a function that stops. */
export function followPageInView(list: HTMLElement, tell: (index: number) => void): () => void {
  const shares = new Map<Element, number>();
  const observer = new IntersectionObserver(
    (entries) => {
      for (const entry of entries) shares.set(entry.target, entry.intersectionRect.height);
      const [most] = [...shares].sort((one, other) => other[1] - one[1]);
      const index = most ? [...list.children].indexOf(most[0]) : -1;
      if (index >= 0) tell(index);
    },
    { root: list, threshold: [0, 0.25, 0.5, 0.75, 1] },
  );
  for (const page of list.children) observer.observe(page);
  return () => observer.disconnect();
}
