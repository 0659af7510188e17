/** `value` counted round by `by`, from 0 up to `by` and never negative, as columns of a repeat without end are. */
export function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}
