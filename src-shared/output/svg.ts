/** A page of the sheet as SVG: for the preview, in the window or as a file. */
import { escapeXml } from './escape.ts';
import { FONT_FAMILY, STRONG_WEIGHT } from './font/metrics.ts';
import type { CellsItem, PathItem, SheetElement, SheetItem, SheetPage, Stroke, TextItem } from './model.ts';
import { POINT_MM } from './paper.ts';
import { colourOf } from './tones.ts';

/**
 * The page as one `<svg>` in mm, which may stand in a document of its own or
 * inline in a page. Text stays text; roles say what it is. Everything is drawn
 * by attributes, without style elements or scripts.
 */
export function sheetToSvg(page: SheetPage): string {
  const { widthMm, heightMm, title, elements } = page;
  const size = `width="${number(widthMm)}mm" height="${number(heightMm)}mm" viewBox="0 0 ${number(widthMm)} ${number(heightMm)}"`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="document" aria-label="${escapeXml(title)}" ${FONT}>` +
    `<rect width="${number(widthMm)}" height="${number(heightMm)}" fill="${colourOf('paper')}" aria-hidden="true"/>` +
    `${elements.map(elementToSvg).join('')}</svg>`
  );
}

/** Attributes that every drawing with text needs at its root. */
export const FONT = `font-family="'${FONT_FAMILY}', sans-serif"`;

function elementToSvg(element: SheetElement): string {
  switch (element.role) {
    case 'heading':
      return `<g role="heading" aria-level="${element.level}">${itemsToSvg(element.items)}</g>`;
    case 'paragraph':
      return `<g role="paragraph">${itemsToSvg(element.items)}</g>`;
    case 'figure':
      return `<g role="img" aria-label="${escapeXml(element.description)}">${itemsToSvg(element.items)}</g>`;
    case 'decoration':
      return `<g aria-hidden="true">${itemsToSvg(element.items)}</g>`;
    case 'list': {
      const entries = element.entries.map(
        ({ label, body }) => `<g role="listitem">${itemsToSvg(label)}${itemsToSvg(body)}</g>`,
      );
      return `<g role="list">${entries.join('')}</g>`;
    }
    case 'table': {
      const rows = element.rows.map(({ isHeader, cells }) => {
        const role = isHeader ? 'columnheader' : 'cell';
        return `<g role="row">${cells.map((items) => `<g role="${role}">${itemsToSvg(items)}</g>`).join('')}</g>`;
      });
      return `<g role="table" aria-label="${escapeXml(element.title)}">${rows.join('')}</g>`;
    }
  }
}

/** Items in the order of drawing; their lengths become user units. */
export function itemsToSvg(items: readonly SheetItem[]): string {
  return items.map(itemToSvg).join('');
}

function itemToSvg(item: SheetItem): string {
  switch (item.kind) {
    case 'text':
      return textToSvg(item);
    case 'rectangle': {
      const { x, y, width, height, fill, stroke } = item;
      const place = `x="${number(x)}" y="${number(y)}" width="${number(width)}" height="${number(height)}"`;
      return `<rect ${place} fill="${fill ? colourOf(fill) : 'none'}"${strokeToSvg(stroke)}/>`;
    }
    case 'path':
      return pathToSvg(item);
    case 'cells':
      return cellsToSvg(item);
  }
}

function textToSvg({ x, y, sizePt, anchor, tone, spans }: TextItem): string {
  const place = `x="${number(x)}" y="${number(y)}" font-size="${number(sizePt * POINT_MM)}" fill="${colourOf(tone)}"`;
  const side = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  const [only] = spans;
  if (spans.length === 1 && only) {
    const weight = only.isStrong ? ` font-weight="${STRONG_WEIGHT}"` : '';
    return `<text ${place}${side}${weight}>${escapeXml(only.text)}</text>`;
  }
  const parts = spans.map(({ text, isStrong }) =>
    isStrong ? `<tspan font-weight="${STRONG_WEIGHT}">${escapeXml(text)}</tspan>` : `<tspan>${escapeXml(text)}</tspan>`,
  );
  return `<text ${place}${side}>${parts.join('')}</text>`;
}

function pathToSvg({ lines, isClosed, fill, stroke }: PathItem): string {
  const data = lines
    .map((points) => `M${points.map(([x, y]) => `${number(x)} ${number(y)}`).join('L')}${isClosed ? 'Z' : ''}`)
    .join('');
  return `<path d="${data}" fill="${fill ? colourOf(fill) : 'none'}"${strokeToSvg(stroke)}/>`;
}

function cellsToSvg({ x, y, cellWidth, cellHeight, fill, runs }: CellsItem): string {
  const height = number(cellHeight);
  const data = runs.map(({ column, line, length }) => {
    const start = `M${number(x + column * cellWidth)} ${number(y + line * cellHeight)}`;
    const width = number(length * cellWidth);
    return `${start}h${width}v${height}h${number(-length * cellWidth)}z`;
  });
  return `<path d="${data.join('')}" fill="${colourOf(fill)}" shape-rendering="crispEdges"/>`;
}

function strokeToSvg(stroke: Stroke | null): string {
  if (!stroke) return '';
  const dash = stroke.dash ? ` stroke-dasharray="${stroke.dash.map(number).join(' ')}"` : '';
  return ` stroke="${colourOf(stroke.paint)}" stroke-width="${number(stroke.width)}"${dash}`;
}

/** At most four decimals: a ten-thousandth of a mm. */
function number(value: number): string {
  return String(Number(value.toFixed(4)));
}
