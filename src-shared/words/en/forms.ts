/** Forms: what a field takes. */
export const forms = {
  wrongNumber: (least: number, most: number, isWhole: boolean): string =>
    `${isWhole ? 'A whole number' : 'A number'} from ${least} to ${most}.`,
  wrongName: (most: number): string => `A name of 1 to ${most} letters.`,
};
