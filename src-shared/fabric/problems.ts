/** Why patterns cannot be put on the piece. Bands and fills by their number, from 1. */
export interface FabricProblems {
  'no-figure': { motif: string };
  'choice-unknown': { given: number; choices: number };
  'rows-outside-piece': { first: number; last: number; rows: number };
  /** The rows on which they meet. */
  'bands-overlap': { one: number; other: number; first: number; last: number };
  'fill-overlaps-band': { fill: number; band: number; first: number; last: number };
  'fills-overlap': { one: number; other: number; first: number; last: number };
  'fill-without-room': { fill: number };
  'fill-rows-turned': { fill: number; first: number; last: number };
}
