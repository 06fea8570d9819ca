import type { ESTree } from 'vite';
import { type Func, givenBack, type ParsedFile, parsedFile } from './parsed-file.ts';

/** Further than this from where a sentence is said its words are not looked for. */
const DEEPEST = 6;
/** So many kinds of words are written out in a sentence. */
const MOST_WRITTEN = 4;
/** Of a sentence put together of parts that each may be several. */
const MOST_VARIANTS = 24;

/** Where an expression stands: its file, and what the function about it was given. */
interface Scope {
  readonly at: ParsedFile;
  readonly given: ReadonlyMap<string, Given>;
  /** calls gone into so far */
  readonly depth: number;
}

interface Given {
  readonly node: ESTree.Expression;
  readonly scope: Scope;
}

/**
 * The sentences that an expression may give, with ⟨what is put in⟩ where that is known only when it is said. What is
 * another's sentence passed on (`error.message`) is none of its own.
 */
export function patternsOf(node: ESTree.Expression, at: ParsedFile): string[] {
  return saidIn(node, { at, given: new Map(), depth: 0 });
}

function saidIn(node: ESTree.Expression, scope: Scope): string[] {
  switch (node.type) {
    case 'Literal':
      return typeof node.value === 'string' ? [node.value] : [];
    case 'TemplateLiteral':
      return templateOf(node, scope);
    case 'ConditionalExpression':
      return [...saidIn(node.consequent, scope), ...saidIn(node.alternate, scope)];
    case 'LogicalExpression':
      return [
        // what stands before && is no sentence where what stands behind it is
        ...(node.operator === '&&' ? [] : saidIn(node.left, scope)),
        ...saidIn(node.right, scope),
      ];
    case 'BinaryExpression':
      return node.operator === '+' ? joined(saidIn(node.left, scope), saidIn(node.right, scope)) : [];
    case 'ParenthesizedExpression':
    case 'TSAsExpression':
    case 'TSNonNullExpression':
    case 'TSSatisfiesExpression':
      return saidIn(node.expression, scope);
    case 'Identifier':
      return namedPatterns(node.name, scope);
    case 'CallExpression':
      return node.callee.type === 'MemberExpression'
        ? saidByMethod(node.callee, node.arguments[0], scope)
        : saidBy(node, scope);
    case 'MemberExpression':
      return node.object.type === 'Identifier' ? tablePatterns(node.object.name, scope) : [];
    default:
      return [];
  }
}

function templateOf({ quasis, expressions }: ESTree.TemplateLiteral, scope: Scope): string[] {
  let all = [quasis[0]?.value.cooked ?? ''];
  for (const [i, expression] of expressions.entries()) {
    const after = quasis[i + 1]?.value.cooked ?? '';
    all = joined(all, putIn(expression, scope)).map((one) => one + after);
  }
  return all;
}

/** A part of a sentence: its words where it is one of a few written beside it, else what it is called. */
function putIn(node: ESTree.Expression, scope: Scope): string[] {
  const own = node.type === 'ConditionalExpression' || node.type === 'Identifier' ? saidIn(node, scope) : [];
  if (own.length > 0 && own.length <= MOST_WRITTEN) return own;
  const { text } = scope.at;
  const name =
    /[A-Za-z_]\w*(?=\W*$)/u.exec(text.slice(node.start, node.end).replace(/\(.*$/su, ''))?.[0] ?? '…';
  return [`⟨${name}⟩`];
}

function joined(left: readonly string[], right: readonly string[], between = ''): string[] {
  return left
    .flatMap((one) => right.map((other) => one + (one !== '' && other !== '' ? between : '') + other))
    .slice(0, MOST_VARIANTS);
}

function namedPatterns(name: string, scope: Scope): string[] {
  const given = scope.given.get(name);
  if (given) return saidIn(given.node, given.scope);
  if (scope.depth >= DEEPEST) return [];
  const { at, depth } = scope;
  const here = at.constants.get(name);
  if (here) return saidIn(here, { ...scope, depth: depth + 1 });
  const taken = at.takenOut.get(name);
  if (taken)
    return returnsOf(taken.call, scope).flatMap(({ node, scope: inside }) =>
      propertyIn(node, taken.property, inside),
    );
  const from = at.imports.get(name);
  return from
    ? namedPatterns(from.name, { at: parsedFile(from.file), given: new Map(), depth: depth + 1 })
    : [];
}

/** Every sentence that a function of ours gives back. */
function saidBy(call: ESTree.CallExpression, scope: Scope): string[] {
  return returnsOf(call, scope).flatMap(({ node, scope: inside }) => saidIn(node, inside));
}

/** What a function of ours that is called gives back, each where it stands. */
function returnsOf({ callee, arguments: words }: ESTree.CallExpression, scope: Scope): Given[] {
  if (callee.type !== 'Identifier' || scope.depth >= DEEPEST) return [];
  const found = functionOf(callee.name, scope.at);
  if (!found) return [];
  const given = new Map<string, Given>();
  for (const [i, param] of found.func.params.entries()) {
    const word = words[i];
    if (param.type === 'Identifier' && word && word.type !== 'SpreadElement')
      given.set(param.name, { node: word, scope });
  }
  const inside = { at: found.at, given, depth: scope.depth + 1 };
  return givenBack(found.func).map((node) => ({ node, scope: inside }));
}

function functionOf(name: string, at: ParsedFile): { func: Func; at: ParsedFile } | undefined {
  const func = at.functions.get(name);
  if (func) return { func, at };
  const from = at.imports.get(name);
  return from?.file.startsWith('geo/units/') === false
    ? functionOf(from.name, parsedFile(from.file))
    : undefined;
}

/** `[a, b].filter(…).join(' ')`, `sentence.trim()`: what is put one after the other, or stripped. */
function saidByMethod(
  { object, property }: ESTree.MemberExpression,
  word: ESTree.Argument | undefined,
  scope: Scope,
): string[] {
  const method = property.type === 'Identifier' ? property.name : '';
  if (method === 'trim') return saidIn(object, scope).map((one) => one.trim());
  const list =
    object.type === 'CallExpression' && object.callee.type === 'MemberExpression'
      ? object.callee.object
      : object;
  const between = word?.type === 'Literal' && typeof word.value === 'string' ? word.value : undefined;
  if (method !== 'join' || between === undefined || list.type !== 'ArrayExpression') return [];
  const parts = list.elements.flatMap((each) => (each && each.type !== 'SpreadElement' ? [each] : []));
  const more = list.elements.flatMap((each) =>
    each?.type === 'SpreadElement' ? saidInList(each.argument, scope) : [],
  );
  return [...(together(parts, between, scope) ?? inARow(parts, between, scope)), ...more];
}

function inARow(parts: readonly ESTree.Expression[], between: string, scope: Scope): string[] {
  const saidBy = (part: ESTree.Expression) => {
    const own = saidIn(part, scope);
    return own.length > 0 ? own : putIn(part, scope);
  };
  return parts.reduce<string[]>((all, part) => joined(all, saidBy(part), between), ['']);
}

/** Parts that were taken out of what one call gives back: those of each such answer belong together. */
function together(parts: readonly ESTree.Expression[], between: string, scope: Scope): string[] | undefined {
  const taken = parts.map((part) =>
    part.type === 'Identifier' ? scope.at.takenOut.get(part.name) : undefined,
  );
  const call = taken[0]?.call;
  if (!call || taken.some((each) => each?.call !== call)) return undefined;
  return returnsOf(call, scope).flatMap(({ node, scope: inside }) =>
    taken.reduce<string[]>(
      (all, each) => joined(all, propertyIn(node, each?.property ?? '', inside), between),
      [''],
    ),
  );
}

/** The sentences of a list that is made one by one, or of one written out. */
function saidInList(node: ESTree.Expression, scope: Scope): string[] {
  if (node.type === 'Identifier') {
    const here = scope.at.constants.get(node.name);
    return here ? saidInList(here, scope) : [];
  }
  const by = node.type === 'CallExpression' ? node.arguments[0] : undefined;
  return by?.type === 'ArrowFunctionExpression' ? givenBack(by).flatMap((each) => saidIn(each, scope)) : [];
}

function propertyIn(node: ESTree.Expression, name: string, scope: Scope): string[] {
  if (node.type !== 'ObjectExpression') return [];
  return node.properties.flatMap((each) =>
    each.type === 'Property' && each.key.type === 'Identifier' && each.key.name === name
      ? saidIn(each.value, scope)
      : [],
  );
}

/** The sentences of a table by kind. */
function tablePatterns(name: string, scope: Scope): string[] {
  if (scope.depth >= DEEPEST) return [];
  const table = scope.at.constants.get(name);
  if (table?.type !== 'ObjectExpression') return [];
  return table.properties.flatMap((each) =>
    each.type === 'Property' ? saidIn(each.value, { ...scope, depth: scope.depth + 1 }) : [],
  );
}
