import { describe, expect, it } from 'vitest';
import { allOver } from './examples/all-over.ts';
import { band } from './examples/band.ts';
import { MACHINE, written, type Example } from './examples/example.ts';
import { hem } from './examples/hem.ts';
import { ownBalls } from './examples/own-balls.ts';
import { shaped } from './examples/shaped.ts';
import { told, without } from './examples/told.ts';
import { knit, type MachineJson } from './index.ts';

describe('the simulated knitter refuses what a machine cannot do', () => {
  it.each<[string, Example, Partial<MachineJson>, string]>([
    [
      'selecting, by hand',
      band,
      { chooses: 'by-hand' },
      'Reading 2, first-needles: this machine does not choose needles.',
    ],
    [
      'end needles without a switch',
      allOver,
      { endNeedles: 'always' },
      'Reading 0, end-needles: this machine has no switch for its end needles.',
    ],
    [
      'pushing needles that are chosen unseen',
      allOver,
      { chooses: 'ahead-unseen' },
      'Reading 1, push-back: no needle can be pushed on this machine.',
    ],
    [
      'counting needles that are chosen unseen',
      band,
      { chooses: 'ahead-unseen' },
      'Reading 3, check: which needles are chosen cannot be seen on this machine.',
    ],
    [
      'an increase away from the carriage',
      shaped,
      { increases: 'carriage-side' },
      "Reading 2, increase: this machine increases at the carriage's side, which is the left.",
    ],
    ['weights that are not there', hem, { weights: false }, 'Reading 0, weights: this machine has no weights.'],
    [
      'a group where fixed places choose otherwise',
      ownBalls,
      { places: { repeat: 6, from: 'L4' } },
      'Reading 0, first-needles: R3 cannot be chosen otherwise than the needles 6 away from it.',
    ],
    [
      'a needle between groups that fixed places choose as well',
      ownBalls,
      { places: { repeat: 3, from: 'L4' } },
      'Reading 0, first-needles: L1 cannot be chosen otherwise than the needles 3 away from it.',
    ],
  ])('%s', (_, example, machine, why) => {
    expect(
      knit(
        told(example.order, -1, (acts) => acts),
        { ...example, machine: { ...MACHINE, ...example.machine, ...machine } },
      ),
    ).toMatchObject({ ok: false, why });
  });

  it('balls laid where no needle stands forward', () => {
    const order = told(told(ownBalls.order, 1, without('check')), 2, without('check'));
    const machine: MachineJson = { ...ownBalls.machine, chooses: 'ahead-unseen' };
    expect(knit(order, { ...ownBalls, machine })).toMatchObject({
      why: 'Reading 1, lay: no needle stands forward to lay a yarn into its hook.',
    });
  });

  it('a group that fixed places reach is knitted all the same', () => {
    const machine: MachineJson = { ...ownBalls.machine, places: { repeat: 12, from: 'L4' } };
    expect(knit(ownBalls.order, { ...ownBalls, machine })).toMatchObject({ ok: true });
  });

  it('isolated groups where the end needles are always chosen, in the fabric that comes of it', () => {
    const order = told(band.order, 2, without('end-needles')).map((item) =>
      item.kind === 'stop' ? { ...item, acts: item.acts.filter(({ act }) => act !== 'check') } : item,
    );
    const done = knit(order, { ...band, machine: { ...MACHINE, endNeedles: 'always' } });
    expect(done.ok && written(done.fabric[3]?.runs ?? [])).toBe(
      'chalk L4, slate L3–L2, chalk L1, slate R1–R3, chalk R4',
    );
  });
});
