/** What can be wrong with a drawing in cells. */
export interface GridProblems {
  'motif-too-large': { width: number; height: number; mostWidth: number; mostHeight: number };
}
