/** What is wrong with a date that was given. */
export interface DayProblems {
  'not-a-date': { text: string };
}
