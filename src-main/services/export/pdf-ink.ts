/**
 * The items of a sheet drawn into a page of a PDF. Millimetres come in, points go out.
 *
 * What a page holds is written as such (ISO 32000, annex A), one text for all
 * that is drawn together: the library makes an array of bytes for each operator
 * and sets what holds already once more. The page's own system has its origin
 * at the top left, as the library sets it up, so text is turned back upright.
 */
import {
  colourOf,
  POINT_MM,
  type CellsItem,
  type Paint,
  type PathItem,
  type SheetItem,
  type Stroke,
  type TextItem,
} from '@shared/output/index.ts';
import type { PdfBytes } from './pdf-bytes.ts';
import { numberText, PdfFont } from './pdf-font.ts';

/** Names under which the two weights of the font are registered. */
export const REGULAR = 'regular';
export const SEMIBOLD = 'semibold';

export class PdfInk {
  private readonly regular: PdfFont;
  private readonly semibold: PdfFont;
  private operators: string[] = [];
  /** What was set last on this page, by operator. */
  private readonly set = new Map<string, string>();

  /** Of a document that both fonts were registered in. */
  constructor(private readonly pdf: PdfBytes) {
    this.regular = PdfFont.of(pdf, REGULAR, 'regular');
    this.semibold = PdfFont.of(pdf, SEMIBOLD, 'semibold');
  }

  /** Begins a page: nothing is set on it. */
  startPage(): void {
    this.set.clear();
  }

  draw(items: readonly SheetItem[]): void {
    for (const item of items) this.drawItem(item);
    this.flush();
  }

  private flush(): void {
    if (this.operators.length > 0) this.pdf.addOperators(this.operators.join('\n'));
    this.operators = [];
  }

  private drawItem(item: SheetItem): void {
    switch (item.kind) {
      case 'text':
        return this.drawText(item);
      case 'rectangle':
        this.choose(item.fill, item.stroke);
        this.rectangle(item.x, item.y, item.width, item.height);
        return this.paint(item.fill, item.stroke);
      case 'path':
        return this.drawPath(item);
      case 'cells':
        return this.drawCells(item);
    }
  }

  private drawText({ x, y, sizePt, anchor, tone, spans }: TextItem): void {
    const width = anchor === 'start' ? 0 : spans.reduce((sum, span) => sum + this.widthOf(span, sizePt), 0);
    let left = x / POINT_MM - (anchor === 'middle' ? width / 2 : width);
    this.colour('rg', tone);
    for (const span of spans) {
      const shaped = this.fontOf(span).shape(span.text);
      if (shaped === null) this.setByLibrary(span, left, y / POINT_MM, sizePt);
      else if (shaped.glyphs !== '') {
        const font = `/${this.fontOf(span).onPage()} ${numberText(sizePt)} Tf`;
        // The font stays set beyond the end of a text.
        this.operators.push('BT');
        this.state('Tf', font);
        this.operators.push(`1 0 0 -1 ${numberText(left)} ${points(y)} Tm`, `[${shaped.glyphs}] TJ`, 'ET');
      }
      left += this.widthOf(span, sizePt);
    }
  }

  private fontOf({ isStrong }: TextItem['spans'][number]): PdfFont {
    return isStrong ? this.semibold : this.regular;
  }

  private widthOf(span: TextItem['spans'][number], sizePt: number): number {
    const shaped = this.fontOf(span).shape(span.text);
    if (shaped) return (shaped.width / 1000) * sizePt;
    return this.libraryFont(span, sizePt).widthOfString(span.text);
  }

  private libraryFont({ isStrong }: TextItem['spans'][number], sizePt: number): PdfBytes {
    return this.pdf.font(isStrong ? SEMIBOLD : REGULAR).fontSize(sizePt);
  }

  private setByLibrary(span: TextItem['spans'][number], left: number, top: number, sizePt: number): void {
    this.flush();
    this.libraryFont(span, sizePt).text(span.text, left, top, { lineBreak: false, baseline: 'alphabetic' });
  }

  private drawPath({ lines, isClosed, fill, stroke }: PathItem): void {
    if (lines.length === 0) return;
    this.choose(fill, stroke);
    for (const line of lines) {
      line.forEach(([x, y], index) => this.operators.push(`${points(x)} ${points(y)} ${index === 0 ? 'm' : 'l'}`));
      if (isClosed) this.operators.push('h');
    }
    this.paint(fill, stroke);
  }

  /** One path for all cells, so that no seam shows between neighbours. */
  private drawCells({ x, y, cellWidth, cellHeight, fill, runs }: CellsItem): void {
    if (runs.length === 0) return;
    this.choose(fill, null);
    for (const { column, line, length } of runs) {
      this.rectangle(x + column * cellWidth, y + line * cellHeight, length * cellWidth, cellHeight);
    }
    this.paint(fill, null);
  }

  private rectangle(x: number, y: number, width: number, height: number): void {
    this.operators.push(`${points(x)} ${points(y)} ${points(width)} ${points(height)} re`);
  }

  /** Sets how the next path is painted: within a path nothing can be set (8.2). */
  private choose(fill: Paint | null, stroke: Stroke | null): void {
    if (stroke) {
      this.state('w', `${points(stroke.width)} w`);
      this.state('d', stroke.dash ? `[${points(stroke.dash[0])} ${points(stroke.dash[1])}] 0 d` : '[] 0 d');
      this.colour('RG', stroke.paint);
    }
    if (fill) this.colour('rg', fill);
  }

  private paint(fill: Paint | null, stroke: Stroke | null): void {
    this.operators.push(fill && stroke ? 'B' : fill ? 'f' : stroke ? 'S' : 'n');
  }

  private colour(operator: 'rg' | 'RG', paint: Paint): void {
    this.state(operator, `${channels(colourOf(paint))} ${operator}`);
  }

  /** Sets something, unless it is what it is already. */
  private state(operator: string, whole: string): void {
    if (this.set.get(operator) === whole) return;
    this.set.set(operator, whole);
    this.operators.push(whole);
  }
}

function points(mm: number): string {
  return numberText(mm / POINT_MM);
}

/** `#ff0080` as shares of 1. */
function channels(colour: string): string {
  return [1, 3, 5].map((at) => numberText(Number.parseInt(colour.slice(at, at + 2), 16) / 255)).join(' ');
}
