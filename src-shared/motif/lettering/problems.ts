/** Why a text cannot be set in cells. */
export interface LetteringProblems {
  'letters-missing': { letters: string; font: string };
  'lettering-empty': Record<string, never>;
}
