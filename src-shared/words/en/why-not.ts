/** Why a command cannot be used now: beside it in the list of commands, and at the foot of the window when it is asked for all the same. */
export const whyNot = {
  undo: 'There is nothing to undo.',
  redo: 'There is nothing to redo.',
  keptWork: 'No unsaved work is kept.',
  exporting: 'Files are being exported. Wait for them, or stop that first.',

  nothingSelected: 'Nothing is selected.',
  nothingCopied: 'Nothing has been copied yet.',
  nothingLifted: 'No cells are lifted.',
  oneMotif: 'The project has no other motif.',
  nothingToStamp: 'The project has no other motif to stamp.',
  noPicture: 'The motif has no picture to trace.',
  mostYarns: 'The project has as many yarns as it can hold.',

  seamed: 'The seamed view does not show it. Open the piece flat first.',
  mostSections: 'The piece has as many sections as it can hold.',
  onePiece: 'The project has no other piece.',
  firstPiece: 'This is the first piece in the list.',
  lastPiece: 'This is the last piece in the list.',
  knitMost: 'This is as many of one piece as can be planned.',
  knitLeast: 'One of each piece is knitted at least.',
  smallestSize: 'This is the smallest size.',
  largestSize: 'This is the largest size.',
  noGroups: 'The piece has no groups.',
  noGroupChosen: 'Choose a group first.',
  needlesOpen: 'The groups of this band have no needles that could be kept.',
  noAllOver: 'The piece has no all-over.',
} as const;
