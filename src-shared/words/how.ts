/** How computed numbers come about, in words. The window is sent them with the parts that show it. */
export { how as howWords } from './en/how.ts';
