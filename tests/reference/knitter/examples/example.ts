/** A running order written by hand, and what comes of it. All of them are common practice, no source. */
import type { Run } from '../fabric.ts';
import { USUAL_MACHINE, type MachineJson, type PatternsJson } from '../machine.ts';
import type { Side } from '../needles.ts';
import type { ActJson, OrderJson, StopJson, StretchJson } from '../order.ts';

export interface Example {
  readonly machine: MachineJson;
  readonly patterns: PatternsJson;
  readonly order: OrderJson;
  /** `slate L3–R3`, or several of them from left to right: what each row is knitted of. */
  readonly fabric: readonly string[];
}

export const MACHINE = USUAL_MACHINE;

/** `L3–R3, pattern, selecting, slate, chalk`: what holds while a row is knitted. */
function holding(text: string): Required<Omit<StretchJson, 'kind' | 'first' | 'last' | 'carriageAt'>> {
  const [needles = '', carriage, selecting, first, second] = text.split(', ');
  const yarn = (name: string | undefined): string | null => (name === undefined || name === 'none' ? null : name);
  return {
    needles: needles.split('–') as [string, string],
    carriage: carriage === 'pattern' ? 'pattern' : 'plain',
    selecting: selecting === 'selecting',
    feeders: { 1: yarn(first), 2: yarn(second) },
  };
}

export function stop(counter: number, carriageAt: Side, holds: string, acts: ActJson[]): StopJson {
  return { kind: 'stop', id: `s${counter}`, counter, row: counter + 1, carriageAt, acts, ...holding(holds) };
}

export function stretch(first: number, last: number, carriageAt: Side, holds: string): StretchJson {
  return { kind: 'stretch', first, last, carriageAt, ...holding(holds) };
}

export function end(counter: number, carriageAt: Side, acts: ActJson[]): StopJson {
  return { kind: 'stop', id: 'end', counter, row: null, carriageAt, acts };
}

/** A row as the examples write it. */
export function written(runs: readonly Run[]): string {
  return runs.map(({ first, last, yarn }) => `${yarn} ${first === last ? first : `${first}–${last}`}`).join(', ');
}
