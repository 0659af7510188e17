/** What can be wrong with a needle that is named. */
export interface BedProblems {
  'needle-unknown': { text: string };
}
