/** The running order in words: what is at hand, each act, each reading. The window is sent it with the benches that tell it. */
export { runningOrder as runningOrderWords } from './en/running-order.ts';
