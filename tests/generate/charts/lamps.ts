/** Light as it falls on a sheet that somebody photographs at a table: a share of red, green and blue at a place of the picture, 0 … 1. */
import type { Chances } from './random.ts';

export type Lamp = (x: number, y: number) => readonly [number, number, number];

export const LAMPS = ['even', 'to one side', 'fall-off', 'hand', 'warm'] as const;
export type LampKind = (typeof LAMPS)[number];

export function lampOf(kind: LampKind, chances: Chances): Lamp {
  const towards = chances.between(0, 2 * Math.PI);
  const along = (x: number, y: number): number =>
    (Math.cos(towards) * (x - 0.5) + Math.sin(towards) * (y - 0.5)) / Math.SQRT2 + 0.5;
  switch (kind) {
    case 'even': {
      const level = chances.between(0.8, 1);
      return () => [level, level, level];
    }
    case 'to one side': {
      const least = chances.between(0.4, 0.7);
      return (x, y) => alike(least + (1 - least) * along(x, y));
    }
    case 'fall-off': {
      // By half from the middle of the light to the far corner.
      const [cx, cy] = [chances.between(0.3, 0.7), chances.between(0.3, 0.7)];
      const far = Math.max(...[0, 1].flatMap((x) => [0, 1].map((y) => (x - cx) ** 2 + (y - cy) ** 2)));
      return (x, y) => alike(1 - (0.5 * ((x - cx) ** 2 + (y - cy) ** 2)) / far);
    }
    case 'hand': {
      // The edge of a hand's shadow is sharp where the hand is near the paper.
      const edge = chances.between(0.25, 0.4);
      const sharp = chances.between(60, 160);
      // Light from the rest of the room still falls into it.
      const depth = chances.between(0.45, 0.7);
      const bend = chances.between(-0.15, 0.15);
      return (x, y) => {
        const s = along(x, y) + bend * Math.sin(3 * (x - y));
        return alike(1 - depth / (1 + Math.exp((s - edge) * sharp)));
      };
    }
    case 'warm': {
      const strength = chances.between(0.15, 0.3);
      return (x, y) => {
        const near = along(x, y);
        return [0.75 + 0.25 * near, 0.75 + (0.25 - 0.4 * strength) * near, 0.75 + (0.25 - strength) * near];
      };
    }
  }
}

function alike(level: number): readonly [number, number, number] {
  return [level, level, level];
}
