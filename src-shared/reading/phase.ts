/** Where edges lie that come back evenly, in one stretch of a chart. */
export interface Phase {
  /** By what part of a cell edges lie after whole multiples of one: −½ … ½. */
  readonly phase: number;
  /** 0 … 1: how much of what is there comes back with the cells. */
  readonly clarity: number;
  /** How much there is. */
  readonly seen: number;
}

/**
 * The phase of edges that come back `times` times along the profiles, within
 * `width` pixels around `middle`, the middle counting most.
 */
export function phaseAround(profiles: readonly Float64Array[], times: number, middle: number, width: number): Phase {
  let re = 0;
  let im = 0;
  let total = 0;
  for (const profile of profiles) {
    const from = Math.max(0, Math.floor(middle - width / 2));
    const to = Math.min(profile.length, Math.ceil(middle + width / 2));
    for (let place = from; place < to; place++) {
      const weight = Math.cos((Math.PI * (place + 0.5 - middle)) / width) ** 2 * (profile[place] as number);
      const angle = (2 * Math.PI * (place + 0.5) * times) / profile.length;
      re += weight * Math.cos(angle);
      im += weight * Math.sin(angle);
      total += weight;
    }
  }
  return {
    phase: Math.atan2(im, re) / (2 * Math.PI),
    clarity: total === 0 ? 0 : Math.hypot(re, im) / total,
    seen: total,
  };
}
