export { groundOf } from './ground.ts';
export * from './formats/index.ts';
export { colourText, parseColour, type Pixels } from './pixels.ts';
export { readMotifPicture, type MotifPicture, type MotifPictureOptions } from './motif-picture.ts';
export { projectFromPicture, yarnsOfPicture, type PictureNames } from './project.ts';
export type * from './problems.ts';
