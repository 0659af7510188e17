export * from './slot.ts';
export * from './faces.ts';
