/** Why groups cannot be placed as asked. */
export interface PlacementProblems {
  'needle-not-on-piece': { needle: string; first: string; last: string };
  'groups-wider-than-piece': { needed: number; available: number; stitches: number };
  'groups-overlap': { left: number; right: number; stitches: number };
  'groups-out-of-order': { left: number; right: number };
  /** `least`: the smallest value to give, for the blank columns that must lie within it. */
  'rule-cannot-be-met': { rule: 'margins' | 'gaps'; given: number; least: number; needed: number; available: number };
  'by-hand-count': { given: number; groups: number };
}
