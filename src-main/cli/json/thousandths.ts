/** Lengths are estimates; what lies behind the third place is noise. */
export function thousandths(value: number): number {
  return Math.round(value * 1000) / 1000;
}
