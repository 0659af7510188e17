export * from './body.ts';
export * from './call-head.ts';
export * from './joining.ts';
export * from './seal.ts';
