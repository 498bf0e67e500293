import ts from 'typescript';

/** One small change to a file: the text between `start` and `end` becomes `to`. */
export type Mutant = { id: number; file: string; line: number; start: number; end: number; from: string; to: string };

const comparisons: Record<string, string[]> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
};
const arithmetic: Record<string, string> = { '+': '-', '-': '+', '*': '/', '/': '*', '%': '*' };
const assignments: Record<string, string> = { '+=': '-=', '-=': '+=', '*=': '/=', '/=': '*=' };
const methods: Record<string, string> = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  some: 'every',
  every: 'some',
  left: 'right',
  right: 'left',
};
const dropped = new Set(['filter', 'reverse', 'toReversed', 'sort', 'toSorted', 'slice']);
const words: readonly [string, string][] = [
  ['wider', 'tighter'],
  ['wide', 'tight'],
  ['left', 'right'],
  ['Wider', 'Tighter'],
  ['Left', 'Right'],
];

/**
 * The file with every mutant of it inside, each behind a switch: `__m(id)` is asked where the code runs, so that one
 * loading serves for all. Only one may be on at a time.
 * @param first id of the first mutant
 */
export function withMutants(file: string, source: string, first: number): { code: string; mutants: Mutant[] } {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS);
  const mutants: Mutant[] = [];
  const add = (node: ts.Node, to: string): number => {
    const start = node.getStart(tree);
    const line = tree.getLineAndCharacterOfPosition(start).line + 1;
    mutants.push({ id: first + mutants.length, file, line, start, end: node.end, from: node.getText(tree), to });
    return first + mutants.length - 1;
  };

  function emit(node: ts.Node): string {
    let text = inner(node);
    for (const to of changesOf(node)) text = `(__m(${add(node, to)})?(${to}):${text})`;
    if (isDroppable(node)) text = `if(!__m(${add(node, '')})){${text}}`;
    return text;
  }

  /** The text of a node with its parts emitted; types stay as they are. */
  function inner(node: ts.Node): string {
    const start = node.getStart(tree);
    let at = start;
    let text = '';
    ts.forEachChild(node, (child) => {
      if (child.end <= at || !isCode(child)) return;
      const begin = child.getStart(tree);
      text += source.slice(at, begin) + emit(child);
      at = child.end;
    });
    return text + source.slice(at, node.end);
  }

  function changesOf(node: ts.Node): string[] {
    if (!isValue(node)) return [];
    const text = (each: ts.Node) => each.getText(tree);
    const changes: string[] = [];
    if (ts.isBinaryExpression(node)) {
      const sign = node.operatorToken.getText(tree);
      const swapped = (to: string) => `${text(node.left)} ${to} ${text(node.right)}`;
      changes.push(...(comparisons[sign] ?? []).map(swapped));
      if (arithmetic[sign] && !isText(node.left) && !isText(node.right)) changes.push(swapped(arithmetic[sign]));
      if (assignments[sign]) changes.push(swapped(assignments[sign]));
      if (sign === '&&' || sign === '||' || sign === '??') changes.push(text(node.left), text(node.right));
    } else if (ts.isPrefixUnaryExpression(node)) {
      if (node.operator === ts.SyntaxKind.ExclamationToken || node.operator === ts.SyntaxKind.MinusToken)
        changes.push(text(node.operand));
      if (node.operator === ts.SyntaxKind.PlusPlusToken) changes.push(`--${text(node.operand)}`);
    } else if (ts.isNumericLiteral(node)) {
      const value = Number(node.text);
      changes.push(String(Number.isInteger(value) ? value + 1 : value * 1.25));
    } else if (node.kind === ts.SyntaxKind.TrueKeyword || node.kind === ts.SyntaxKind.FalseKeyword) {
      changes.push(node.kind === ts.SyntaxKind.TrueKeyword ? 'false' : 'true');
    } else if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateExpression(node)) {
      changes.push(...otherWords(node));
    } else if (ts.isPropertyAccessExpression(node)) {
      const other = methods[node.name.text];
      if (other && !node.questionDotToken) changes.push(`${text(node.expression)}.${other}`);
    } else if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const { expression, name } = node.expression;
      if (dropped.has(name.text)) changes.push(text(expression));
      if (name.text === 'abs') changes.push(node.arguments.map(text).join(', '));
    }
    if (isCondition(node) && node.kind !== ts.SyntaxKind.TrueKeyword && node.kind !== ts.SyntaxKind.FalseKeyword) {
      changes.push('false');
      if (!ts.isWhileStatement(node.parent) && !ts.isForStatement(node.parent)) changes.push('true');
    }
    return changes;
  }

  function otherWords(node: ts.Node): string[] {
    const whole = node.getText(tree);
    return words.flatMap(([one, other]) => {
      const found = new RegExp(`\\b(${one}|${other})\\b`).test(whole);
      const swap = (word: string) => (word === one ? other : one);
      return found ? [whole.replace(new RegExp(`\\b(${one}|${other})\\b`, 'g'), swap)] : [];
    });
  }

  return { code: emit(tree), mutants };
}

/** Whether this part is code that runs, and not a type, a name or an import. */
function isCode(node: ts.Node): boolean {
  return !(
    ts.isTypeNode(node) ||
    ts.isImportDeclaration(node) ||
    ts.isInterfaceDeclaration(node) ||
    ts.isTypeAliasDeclaration(node) ||
    ts.isTypeParameterDeclaration(node) ||
    (ts.isExportDeclaration(node) && true)
  );
}

/** Whether the node is in the place of a value that is read, so that another value may replace it. */
function isValue(node: ts.Node): boolean {
  const { parent } = node;
  if (!ts.isExpression(node)) return false;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return false;
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) return false;
  if (ts.isBindingElement(parent) && parent.initializer !== node) return false;
  if (ts.isBinaryExpression(parent) && parent.left === node && isAssignment(parent.operatorToken.kind)) return false;
  if (ts.isPrefixUnaryExpression(parent) || ts.isPostfixUnaryExpression(parent))
    if (parent.operator === ts.SyntaxKind.PlusPlusToken || parent.operator === ts.SyntaxKind.MinusMinusToken)
      return false;
  // A method is called on what it belongs to: the whole call is changed where that is wanted.
  if (ts.isCallExpression(parent) && parent.expression === node)
    return ts.isPropertyAccessExpression(node) && isSwappable(node);
  if (ts.isNonNullExpression(parent) && isAssigned(parent)) return false;
  return !ts.isComputedPropertyName(parent) && !ts.isLiteralTypeNode(parent) && !ts.isEnumMember(parent);
}

/** `Math.min` stays a call of Math; `some` must keep its list. */
const isSwappable = (node: ts.PropertyAccessExpression) =>
  node.expression.getText() === 'Math' && ['min', 'max', 'floor', 'ceil'].includes(node.name.text);

const isAssigned = (node: ts.Node) =>
  ts.isBinaryExpression(node.parent) && node.parent.left === node && isAssignment(node.parent.operatorToken.kind);

const isAssignment = (kind: ts.SyntaxKind) =>
  kind >= ts.SyntaxKind.FirstAssignment && kind <= ts.SyntaxKind.LastAssignment;

const isText = (node: ts.Node): boolean =>
  ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateExpression(node);

function isCondition(node: ts.Node): boolean {
  const { parent } = node;
  return (
    ((ts.isIfStatement(parent) || ts.isWhileStatement(parent)) && parent.expression === node) ||
    ((ts.isConditionalExpression(parent) || ts.isForStatement(parent)) && parent.condition === node)
  );
}

/** A statement that can be left out: what it does, and not what it names, is missing then. */
function isDroppable(node: ts.Node): boolean {
  if (ts.isExpressionStatement(node)) return !ts.isStringLiteral(node.expression);
  return ts.isContinueStatement(node) || ts.isBreakStatement(node);
}
