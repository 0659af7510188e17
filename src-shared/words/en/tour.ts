/** The tour of the benches: six steps on the sample. */
export const tour = {
  label: 'Tour',
  /** Before the title: `2 of 6`. */
  step: (at: number, of: number): string => `${at} of ${of}`,
  back: 'Back',
  next: 'Next',
  finish: 'Finish',
  leave: 'Leave the tour',

  steps: {
    draw: {
      title: 'Draw',
      text: 'Each cell is a stitch, as it will be worn. Draw with the mouse, or with the arrow keys and Space; the right button draws the ground. Undo takes back any step.',
    },
    understand: {
      title: 'See what it is',
      text: 'The repeat is found for you, and columns that are blank are hatched: the lighthouse has one at the right. What is said here follows while you draw.',
    },
    place: {
      title: 'Place it',
      text: 'Groups of the motif stand on the sleeve so that what you see is spaced evenly, across the seam too. Drag a group, or choose another placing at the right.',
    },
    mend: {
      title: 'See what to mend',
      text: 'The line at the top counts what to watch, such as long floats, and opens it with what you can do about each. Fingers catch in long floats inside a baby’s garment: shorten or line them.',
    },
    wear: {
      title: 'See it worn',
      text: '“As worn” turns the piece to the side that will be seen. “Seamed” closes it, so that you see how the figures meet at the seam.',
    },
    print: {
      title: 'Print, and knit',
      text: 'Lay the sheet beside the machine, or go through it row by row on the Knit bench: how to set up, where each group starts, and every row in order. Sizes are as true as your gauge, so knit a swatch first.',
    },
  },
};
