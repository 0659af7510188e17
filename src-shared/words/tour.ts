/** What the tour says; the window is sent it with the tour. */
export { tour as tourWords } from './en/tour.ts';
