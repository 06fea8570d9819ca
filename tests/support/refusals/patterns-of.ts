import type { ESTree } from 'vite';
import { givenBack, type ParsedFile, parsedFile } from './parsed-file.ts';

/** Further than this from where a sentence is said its words are not looked for. */
const DEEPEST = 4;
/** Of a sentence put together of parts that each may be several. */
const MOST_VARIANTS = 24;

/**
 * The sentences that an expression may give, with ⟨what is put in⟩ where that is known only when it is said. What is
 * another's sentence passed on (`error.message`) is none of its own.
 */
export function patternsOf(node: ESTree.Expression, at: ParsedFile, depth = 0): string[] {
  switch (node.type) {
    case 'Literal':
      return typeof node.value === 'string' ? [node.value] : [];
    case 'TemplateLiteral':
      return templateOf(node, at, depth);
    case 'ConditionalExpression':
      return [...patternsOf(node.consequent, at, depth), ...patternsOf(node.alternate, at, depth)];
    case 'LogicalExpression':
      return [...patternsOf(node.left, at, depth), ...patternsOf(node.right, at, depth)];
    case 'BinaryExpression':
      return node.operator === '+'
        ? joined(patternsOf(node.left, at, depth), patternsOf(node.right, at, depth))
        : [];
    case 'ParenthesizedExpression':
    case 'TSAsExpression':
    case 'TSNonNullExpression':
    case 'TSSatisfiesExpression':
      return patternsOf(node.expression, at, depth);
    case 'Identifier':
      return depth < DEEPEST ? namedPatterns(node.name, at, depth) : [];
    case 'CallExpression':
      return node.callee.type === 'Identifier' && depth < DEEPEST ? saidBy(node.callee.name, at, depth) : [];
    case 'MemberExpression':
      return node.object.type === 'Identifier' && depth < DEEPEST
        ? tablePatterns(node.object.name, at, depth)
        : [];
    default:
      return [];
  }
}

function templateOf(
  { quasis, expressions }: ESTree.TemplateLiteral,
  at: ParsedFile,
  depth: number,
): string[] {
  let all = [quasis[0]?.value.cooked ?? ''];
  for (const [i, expression] of expressions.entries()) {
    const after = quasis[i + 1]?.value.cooked ?? '';
    all = joined(all, putIn(expression, at, depth)).map((one) => one + after);
  }
  return all;
}

/** A part of a sentence: its words where it is one of a few written beside it, else what it is called. */
function putIn(node: ESTree.Expression, at: ParsedFile, depth: number): string[] {
  const own =
    node.type === 'ConditionalExpression' || node.type === 'Identifier' ? patternsOf(node, at, depth) : [];
  if (own.length > 0 && own.length <= 3) return own;
  const name =
    /[A-Za-z_]\w*(?=\W*$)/u.exec(at.text.slice(node.start, node.end).replace(/\(.*$/su, ''))?.[0] ?? '…';
  return [`⟨${name}⟩`];
}

function joined(left: readonly string[], right: readonly string[]): string[] {
  return left.flatMap((one) => right.map((other) => one + other)).slice(0, MOST_VARIANTS);
}

function namedPatterns(name: string, at: ParsedFile, depth: number): string[] {
  const here = at.constants.get(name);
  if (here) return patternsOf(here, at, depth + 1);
  const from = at.imports.get(name);
  return from ? namedPatterns(from.name, parsedFile(from.file), depth + 1) : [];
}

/** Every sentence that a function of ours gives back. */
function saidBy(name: string, at: ParsedFile, depth: number): string[] {
  const here = at.functions.get(name);
  if (here) return givenBack(here).flatMap((node) => patternsOf(node, at, depth + 1));
  const from = at.imports.get(name);
  return from?.file.startsWith('geo/units/') === false
    ? saidBy(from.name, parsedFile(from.file), depth + 1)
    : [];
}

/** The sentences of a table by kind. */
function tablePatterns(name: string, at: ParsedFile, depth: number): string[] {
  const table = at.constants.get(name);
  if (table?.type !== 'ObjectExpression') return [];
  return table.properties.flatMap((each) =>
    each.type === 'Property' ? patternsOf(each.value, at, depth + 1) : [],
  );
}
