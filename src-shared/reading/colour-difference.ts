/**
 * How different two yarns look, in steps of which about one is just seen side
 * by side: CIEDE2000 (CIE 142:2001; Sharma, Wu, Dalal 2005), as `culori` has it.
 */
import { differenceCiede2000, modeLab65, modeLrgb, modeRgb, modeXyz65, useMode } from 'culori/fn';
import { toLinear } from './oklab.ts';

useMode(modeRgb);
useMode(modeLrgb);
useMode(modeXyz65);
useMode(modeLab65);
const difference = differenceCiede2000();

/** CIELAB for daylight (D65). */
export interface Lab {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** Between two colours in CIELAB. */
export function labDifference(one: Lab, other: Lab): number {
  return difference({ mode: 'lab65', ...one }, { mode: 'lab65', ...other });
}

/** Between two colours in linear light, each channel 0 … 1. */
export function linearDifference(one: readonly number[], other: readonly number[]): number {
  const lrgb = ([r = 0, g = 0, b = 0]: readonly number[]) => ({ mode: 'lrgb' as const, r, g, b });
  return difference(lrgb(one), lrgb(other));
}

/** Between two colours `#rrggbb`. */
export function hexDifference(one: string, other: string): number {
  return linearDifference(linearOf(one), linearOf(other));
}

function linearOf(colour: string): number[] {
  const value = Number.parseInt(colour.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255].map((channel) => toLinear(channel / 255));
}
