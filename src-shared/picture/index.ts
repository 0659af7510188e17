export { groundOf } from './ground.ts';
export { readPng } from './png.ts';
export { colourText, parseColour } from './pixels.ts';
export { readMotifPicture, type MotifPicture, type MotifPictureOptions } from './motif-picture.ts';
export { projectFromPicture, yarnsOfPicture, type PictureNames } from './project.ts';
