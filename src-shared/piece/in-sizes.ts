/**
 * Values that may differ from size to size: one for all sizes, and those of the
 * sizes that have another.
 *
 * Canonical, so that what is the same looks the same: in the order of the
 * sizes, none that is equal to that of all, none of a size that is not there.
 */
import { refuse, type z } from '../schema/index.ts';
import type { SizeId } from './size-model.ts';

/** A value of each size. */
export interface InSizes<T> {
  readonly all: T;
  /** In the order of sizes; no value equal to `all`. */
  readonly but: readonly { readonly size: SizeId; readonly value: T }[];
}

/** The same value in all sizes. */
export function inAllSizes<T>(all: T): InSizes<T> {
  return { all, but: [] };
}

export function valueIn<T>({ all, but }: InSizes<T>, size: SizeId): T {
  const own = but.find((one) => one.size === size);
  return own ? own.value : all;
}

/** The values with another one in `size`; `sizes` are all that there are, in order. */
export function withValueIn<T>(values: InSizes<T>, size: SizeId, value: T, sizes: readonly SizeId[]): InSizes<T> {
  return withValues(values.all, sizes, (each) => (each === size ? value : valueIn(values, each)));
}

/** These values, where all sizes have `all` but those that differ. */
export function withValues<T>(all: T, sizes: readonly SizeId[], of: (size: SizeId) => T): InSizes<T> {
  const but = sizes.map((size) => ({ size, value: of(size) })).filter(({ value }) => !isSame(value, all));
  return { all, but };
}

/** The values with as little as possible said apart: where no size has that of all any more, that of the first one takes its place. */
export function settled<T>(values: InSizes<T>, sizes: readonly SizeId[]): InSizes<T> {
  const [first] = sizes;
  if (first === undefined || values.but.length < sizes.length) return values;
  return withValues(valueIn(values, first), sizes, (size) => valueIn(values, size));
}

/** Refuses values of sizes that are not there or out of order, and those that say again what all have. */
export function checkInSizes(
  payload: z.core.ParsePayload,
  path: readonly (string | number)[],
  { all, but }: InSizes<unknown>,
  sizes: readonly SizeId[],
): void {
  let last = -1;
  but.forEach(({ size, value }, b) => {
    const at = sizes.indexOf(size);
    if (at < 0) refuse(payload, [...path, 'but', b, 'size'], 'size-missing', { size });
    else if (at <= last) refuse(payload, [...path, 'but', b, 'size'], 'size-out-of-order', {});
    if (isSame(value, all)) refuse(payload, [...path, 'but', b, 'value'], 'as-in-all-sizes', {});
    last = Math.max(last, at);
  });
}

function isSame(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}
