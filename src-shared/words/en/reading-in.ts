/** Reading pictures in: what is on one, and the dialog that reads a chart out of a photo. */
export const readingIn = {
  /** Asked where a picture can be taken in more than one way. */
  question: {
    title: 'What is on it?',
    told: (name: string, width: number, height: number): string => `${name}, ${width} × ${height} pixels`,
    picture: (name: string): string => `The picture ${name}`,
    opening: (name: string): string => `Opening ${name}…`,
  },
  /** Each way to take a picture in: what is on it, and what becomes of it. */
  ways: {
    cells: {
      label: 'One pixel for each cell',
      hint: 'Opens as a motif of that many stitches and rows, in a new project.',
    },
    picture: {
      label: 'Any picture',
      hint: 'Is brought down to as many stitches, rows and yarns as you like.',
    },
  },
};

export type ReadingWayName = keyof typeof readingIn.ways;
