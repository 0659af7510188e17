/** How light a colour is, 0 … 255: the weights of ITU-R BT.601. */
export function luma(colours: ArrayLike<number>, at: number): number {
  return 0.299 * (colours[at] as number) + 0.587 * (colours[at + 1] as number) + 0.114 * (colours[at + 2] as number);
}
