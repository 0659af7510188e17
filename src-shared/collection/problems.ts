/** What keeps a motif out of the collection, or a file of it from being shown. */
export interface CollectionProblems {
  /** A file of the collection holds one motif, and this one holds more. */
  'motifs-several': { motifs: number };
  /** Several motifs of the collection are called so; these are their files. */
  'collected-several': { files: readonly string[] };
}
