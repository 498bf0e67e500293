import PDFDocument from 'pdfkit';
import { faceFile, faceName, runsOf, type Style } from './faces';
import type { Element, Op, SheetPage } from './page';
import type { Columns } from './paper';
import type { Widths } from './setter';

type Doc = PDFKit.PDFDocument;
export type Struct = ReturnType<Doc['struct']>;

/** An empty PDF 1.7, tagged, with title and language, marked as PDF/UA-1 (ISO 14289-1); pages are added one by one. */
export function newDocument(title: string, subject: string, now: Date): Doc {
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    tagged: true,
    // A subset that pdfkit has and its types don't list.
    subset: 'PDF/UA' as 'PDF/A-1',
    lang: 'en-GB',
    displayTitle: true,
    // No face by default: all of them are embedded, from our own files.
    font: null as unknown as string,
    info: { Title: title, Subject: subject, Creator: 'Kerncrit', Producer: 'Kerncrit', CreationDate: now },
  });
  return doc;
}

/**
 * Widths in the document's fonts. Measured ones are cached: a class set lays each sheet out twice, and stock notes
 * recur.
 */
export function widthsIn(doc: Doc): Widths {
  const known = new Map<Style, Map<string, number>>();
  return (text, style) => {
    let ofStyle = known.get(style);
    if (!ofStyle || ofStyle.size >= remembered) known.set(style, (ofStyle = new Map()));
    const before = ofStyle.get(text);
    if (before !== undefined) return before;
    const width = runsOf(text, style).reduce(
      (sum, { text: run, subset }) => sum + chosen(doc, style, subset).widthOfString(run),
      0,
    );
    ofStyle.set(text, width);
    return width;
  };
}

/** Texts of one style: a few megabytes at most. */
const remembered = 20_000;

function chosen(doc: Doc, style: Style, subset: string): Doc {
  const name = faceName(style, subset);
  doc.registerFont(name, faceFile(style, subset));
  return doc.font(name, style.size);
}

/** Puts a page into the document; what is read goes under `parent`, in order: one for all, or one for each tag. */
export function paintPage(
  doc: Doc,
  parent: Struct | ((tag: Element['tag']) => Struct),
  { elements, furniture }: SheetPage,
  { width, height }: Columns,
  named?: string,
): void {
  doc.addPage({ size: [width, height], margins: { top: 0, bottom: 0, left: 0, right: 0 } });
  if (named) doc.addNamedDestination(named);
  for (const element of elements) addElement(doc, typeof parent === 'function' ? parent(element.tag) : parent, element);
  doc.markContent('Artifact', { type: 'Layout' });
  for (const op of furniture) paint(doc, op);
  doc.endMarkedContent();
}

function addElement(doc: Doc, parent: Struct, { tag, alt, actual, scope, bbox, goTo, ops, children }: Element): void {
  const struct = doc.struct(tag, { alt, actual, scope, bbox } as Parameters<Doc['struct']>[1] & object);
  parent.add(struct);
  if (ops)
    struct.add(() => {
      for (const op of ops) paint(doc, op);
    });
  if (goTo)
    doc.goTo(goTo.x, goTo.y, goTo.width, goTo.height, goTo.name, {
      structParent: struct,
      Contents: new String(goTo.says),
    } as object);
  for (const child of children ?? []) addElement(doc, struct, child);
  struct.end();
}

function paint(doc: Doc, op: Op): void {
  if (op.kind === 'text') return paintText(doc, op);
  if (op.kind === 'rect') doc.rect(op.x, op.y, op.width, op.height).fill(op.ink);
  if (op.kind === 'hairline') {
    op.points.forEach(([x, y], index) => (index === 0 ? doc.moveTo(x, y) : doc.lineTo(x, y)));
    doc.lineWidth(op.width).lineJoin('round').stroke(op.ink);
  }
  if (op.kind === 'outline') {
    for (const {
      letter,
      numbers: [a, b, c, d, e, f],
    } of op.commands) {
      if (letter === 'M') doc.moveTo(a!, b!);
      else if (letter === 'L') doc.lineTo(a!, b!);
      else if (letter === 'Q') doc.quadraticCurveTo(a!, b!, c!, d!);
      else if (letter === 'C') doc.bezierCurveTo(a!, b!, c!, d!, e!, f!);
      else doc.closePath();
    }
    doc.fill(op.ink, 'nonzero');
  }
}

function paintText(doc: Doc, { x, y, text, style, ink }: Op & { kind: 'text' }): void {
  let at = x;
  for (const run of runsOf(text, style)) {
    chosen(doc, style, run.subset).fillColor(ink).text(run.text, at, y, { lineBreak: false, baseline: 'alphabetic' });
    at += doc.widthOfString(run.text);
  }
}
