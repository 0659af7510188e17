/** A simulated knitter that follows a running order to the letter. It shares nothing with the program. */
export { isSameWork, knit, type Knitted, type Refused, type ToKnitWith } from './knitter.ts';
export { differences, finishedFace, yarnsOf, type FabricRow, type Run } from './fabric.ts';
export type { Step, StrandLaid } from './way.ts';
export type { WrappingStrand } from './strands.ts';
export { designOf, type Design } from './design-of.ts';
export { USUAL_MACHINE, type MachineJson, type PatternsJson } from './machine.ts';
export { mutations, type Mutation } from './mutations.ts';
export type { ActJson, OrderJson, StopJson, StretchJson } from './order.ts';
