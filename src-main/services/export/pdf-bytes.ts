/**
 * The PDF library's document, whose bytes are kept as they come.
 *
 * It is a stream, which passes on each of the thousands of pieces that a tagged
 * sheet is written in: that takes longer than to write them. And it turns text
 * into bytes letter by letter, where the platform does so at once.
 */
import PDFDocument from 'pdfkit';

/** What the library works with; its types leave it out. */
interface Writing {
  _offset: number;
}

export class PdfBytes extends PDFDocument {
  /** Declared only: the library writes before fields of a class are set. */
  declare private pieces: Uint8Array[] | undefined;

  /** The library gives each piece of the file to this; null behind the last. */
  override push(piece: Uint8Array | null): boolean {
    if (piece !== null) (this.pieces ??= []).push(piece);
    return true;
  }

  /** Writes bytes, or a line of text, whose letters are a byte each. */
  _write(piece: Uint8Array | string): void {
    const bytes = typeof piece === 'string' ? latin1(`${piece}\n`) : piece;
    this.push(bytes);
    (this as unknown as Writing)._offset += bytes.length;
  }

  /** Operators for the page that is drawn on. */
  addOperators(text: string): void {
    (this as unknown as { addContent(bytes: Uint8Array): void }).addContent(latin1(`${text}\n`));
  }

  /** Ends the file. All of its bytes. */
  ended(): Uint8Array {
    this.end();
    return Buffer.concat(this.pieces ?? []);
  }
}

function latin1(text: string): Uint8Array {
  return Buffer.from(text, 'latin1');
}
