import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { readSources, type SourceFile } from './source-tree';

/** What a native typographer would not write on a screen, in a letter or on a sheet, and what to write there. */
const faults: readonly { fault: RegExp; write: string }[] = [
  {
    fault: /\b(stands?|stood) (here|there|outside|too|as|in|on|at|under|below|beside|side|for|together|more)\b/i,
    write: 'is, appears, is listed',
  },
  { fault: /\b(somebody|nobody|anybody|everybody|whoever)\b/i, write: 'a role, “you”, “anyone who …” or “no one”' },
  { fault: /\bt(ake|akes|aken|ook) (back|away)\b/i, write: 'withdraw, undo, restore, delete, remove or revoke' },
  {
    fault: /\b(takes?|taken|took|puts?) (it|them|me|you|my \w+|this \w+|“[^”]*”) (back|away|out|off)\b/i,
    write: 'restore, delete, remove or withdraw',
  },
  { fault: /\b(may be|is) left empty\b/i, write: '(optional)' },
  { fault: /\bnot done yet\b/i, write: 'Not saved yet' },
  { fault: /\bline before\b/i, write: 'Previous line' },
  { fault: /\blaid (to rest|over|under|beside)\b/i, write: 'archived; overlay' },
  { fault: /\b(did not come|on (its|their) way)\b/i, write: 'couldn’t be loaded; is being sent' },
  { fault: /\bteachers?\b/i, write: 'instructor' },
  { fault: /\b(too loose|looser)\b/i, write: 'too wide; wider' },
  { fault: /\bas the face comes\b/i, write: 'untouched' },
  { fault: /\bwell seen\b/i, write: 'well judged' },
  { fault: /\b(equal|two|all|other|suggested|several) settings?\b/i, write: 'spacing (settings are options)' },
  { fault: /\bspecimens?\b/i, write: 'line' },
  { fault: /\bnothing here for you\b/i, write: 'Page not found' },
  { fault: /\bdo not fit together\b/i, write: 'don’t match' },
  { fault: /\d\s%/, write: '69.5%, without a space' },
  { fault: /\b(is|are|was|were) told\b/i, write: 'sees, gets, is notified, is reminded' },
  { fault: /\b(stands?|stood) (above|below)\b/i, write: 'is above, see above' },
  { fault: /\b(end|ends|ended) the keeping\b|\bkeeping ended\b/i, write: 'retention' },
];

/** Any of them, asked first: nearly every sentence has none. */
const anyFault = new RegExp(faults.map(({ fault }) => `(?:${fault.source})`).join('|'), 'i');

/**
 * Sentences and labels of a file: JSX text, and strings that are more than one word. Never names in code or addresses.
 */
function wordsOf({ tree }: SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    if (ts.isJsxAttribute(node) && /^(className|href|id|htmlFor|name|value|key)$/.test(node.name.getText(tree))) return;
    if (ts.isJsxText(node)) found.push(node.text);
    else if (ts.isStringLiteralLike(node)) found.push(node.text);
    else if (ts.isTemplateExpression(node)) {
      // What is put in is a value; only what surrounds it is written here.
      found.push([node.head.text, ...node.templateSpans.map((span) => span.literal.text)].join(' … '));
      node.templateSpans.forEach((span) => visit(span.expression));
      return;
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found.map((text) => text.replace(/\s+/g, ' ').trim()).filter((text) => /\p{L} \p{L}/u.test(text));
}

/** Not read by people in the product: how models are trained, SQL, names of statistics. */
const elsewhere = /^(lib\/bin\/|lib\/data\/|lib\/face\/processes\/|shared\/usual-range\/)/;

describe('the words on screens, in letters and on sheets', () => {
  test('none of the faults that read as translated', () => {
    const wrong = [...readSources().values()]
      .filter(({ path }) => !elsewhere.test(path))
      .flatMap((file) =>
        wordsOf(file).flatMap((text) =>
          (anyFault.test(text) ? faults : [])
            .filter(({ fault }) => fault.test(text))
            .map(({ fault, write }) => `${file.path}: “${text.slice(0, 120)}” (${fault.exec(text)![0]}; ${write})`),
        ),
      );
    expect(wrong).toEqual([]);
  });
});
