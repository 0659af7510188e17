export * from './call-head.ts';
export * from './joining.ts';
export * from './seal.ts';
