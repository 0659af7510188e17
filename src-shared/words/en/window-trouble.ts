/** A window whose page has ended or does not answer. */
export const windowTrouble = {
  ended: {
    title: 'The window stopped working.',
    detail: (isMemory: boolean): string =>
      `${isMemory ? 'It ran out of memory. ' : ''}Loaded again, it offers the work that was kept: all but the last second or so.`,
    reload: 'Load it again',
    close: 'Close the program',
  },
  hanging: {
    title: 'The window does not answer.',
    detail:
      'It may be busy and come back. Closed now, unsaved work was kept, all but the last second or so, and is offered at the next start.',
    wait: 'Wait',
    close: 'Close it',
  },
};
