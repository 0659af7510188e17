/** What the parts of a project read from a picture are called until somebody names them. */
export const pictures = {
  /** Yarn at a palette index of `yarns`; 0 is the ground. */
  yarn(index: number, yarns: number): string {
    if (index === 0) return 'main';
    return yarns === 2 ? 'contrast' : `contrast ${index}`;
  },
};
