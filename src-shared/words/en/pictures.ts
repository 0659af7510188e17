/** What the parts of a project read from a picture are called until somebody names them. */
export const pictures = {
  /** The yarn at a palette index. */
  yarn: (index: number): string => `colour ${index + 1}`,
};
