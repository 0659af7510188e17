/** A priority queue: a binary heap, least first. */
export class Queue<T> {
  private readonly heap: T[] = [];

  /** `compare` is negative if its first argument comes out before its second. */
  constructor(private readonly compare: (a: T, b: T) => number) {}

  /** The least entry, left in; undefined if there is none. */
  peek(): T | undefined {
    return this.heap[0];
  }

  push(entry: T): void {
    const { heap, compare } = this;
    let hole = heap.length;
    heap.push(entry);
    while (hole > 0) {
      const parent = (hole - 1) >> 1;
      const above = heap[parent] as T;
      if (compare(above, entry) <= 0) break;
      heap[hole] = above;
      hole = parent;
    }
    heap[hole] = entry;
  }

  /** Takes the least entry out; undefined if there is none. */
  pop(): T | undefined {
    const { heap, compare } = this;
    const least = heap[0];
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return least;
    let hole = 0;
    for (;;) {
      let child = 2 * hole + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && compare(heap[child + 1] as T, heap[child] as T) < 0) child++;
      if (compare(last, heap[child] as T) <= 0) break;
      heap[hole] = heap[child] as T;
      hole = child;
    }
    heap[hole] = last;
    return least;
  }
}
