/** What is written on the drawing of a piece. The window is sent it with the bench that draws it. */
export { pieceDrawing as pieceDrawingWords } from './en/piece-drawing.ts';
