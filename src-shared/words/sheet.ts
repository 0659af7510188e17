/** What the printed sheet says. It comes with what makes the sheet, and the window does not wait for it. */
export { sheet as sheetWords } from './en/sheet.ts';
