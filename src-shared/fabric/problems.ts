/** Why patterns cannot be put on the piece. Bands and all-overs by their numbers, from 1. */
export interface FabricProblems {
  'no-figure': { motif: string };
  'choice-unknown': { given: number; choices: number };
  'rows-outside-piece': { first: number; last: number; rows: number };
  /** The rows on which they meet. */
  'bands-overlap': { one: number; other: number; first: number; last: number };
  'fill-overlaps-band': { allOver: number; band: number; first: number; last: number };
  'fills-overlap': { one: number; other: number; first: number; last: number };
  'fill-without-room': { allOver: number };
  'fill-rows-turned': { allOver: number; first: number; last: number };
}
