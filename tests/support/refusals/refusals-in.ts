import { type ESTree, Visitor } from 'vite';
import { type ParsedFile, parsedFile } from './parsed-file.ts';
import { patternsOf } from './patterns-of.ts';

/** A sentence that somebody may be refused with, where it is said, and under which code. */
export interface Refusal {
  readonly file: string;
  readonly code: string;
  readonly sentence: string;
}

/** A function that refuses with words it is given, and where it puts them. */
interface Wrapper {
  readonly name: string;
  readonly param: number;
  readonly inside: readonly string[];
  readonly code: string;
}

type Func = ESTree.Function | ESTree.ArrowFunctionExpression;

/** What takes a code and a sentence. */
const REFUSING = new Set(['fail', 'Refusal', 'Refused']);

/** Every refusal made in a file: `fail`, what is thrown of a decoder, and problems written out. */
export function refusalsIn(file: string): Refusal[] {
  const at = parsedFile(file);
  const found: Refusal[] = [];
  const through = new Map<string, Wrapper>();
  const open: Func[] = [];
  const put = (codeNode: ESTree.Expression, message: ESTree.Expression) => {
    const code = codeOf(codeNode, at);
    const sentences = patternsOf(message, at);
    for (const sentence of sentences) found.push({ file, code, sentence });
    noteWrapper(message, sentences, code);
  };
  /** A function of the file's own that is given the words, or a part of them. */
  const noteWrapper = (message: ESTree.Expression, sentences: string[], code: string) => {
    const text = at.text.slice(message.start, message.end);
    for (const func of open)
      for (const [param, { name }] of paramsOf(func).entries())
        if (new RegExp(`(?:^|\\$\\{)${name}\\b`, 'u').test(text)) {
          const called = [...at.functions].find(([, each]) => each.start === func.start)?.[0];
          const inside = text === name ? [`⟨${name}⟩`] : sentences;
          if (called)
            through.set(called, {
              name,
              param,
              inside: inside.filter((one) => one.includes(`⟨${name}⟩`)),
              code,
            });
        }
  };
  const enter = (node: Func) => {
    open.push(node);
  };
  const leave = () => {
    open.pop();
  };
  new Visitor({
    FunctionDeclaration: enter,
    'FunctionDeclaration:exit': leave,
    ArrowFunctionExpression: enter,
    'ArrowFunctionExpression:exit': leave,
    CallExpression(node) {
      const [code, message] = node.arguments;
      if (
        node.callee.type === 'Identifier' &&
        REFUSING.has(node.callee.name) &&
        isOne(code) &&
        isOne(message)
      )
        put(code, message);
    },
    NewExpression(node) {
      const [code, message] = node.arguments;
      if (
        node.callee.type === 'Identifier' &&
        REFUSING.has(node.callee.name) &&
        isOne(code) &&
        isOne(message)
      )
        put(code, message);
    },
    ObjectExpression({ properties }) {
      const code = propertyOf(properties, 'code');
      const message = propertyOf(properties, 'message');
      if (code && message) put(code, message);
    },
  }).visit(at.program);
  const filled = throughWrappers(at, through);
  const isFilled = ({ code, sentence }: Refusal) =>
    [...through.values()].some(
      (wrapper) =>
        wrapper.code === code &&
        wrapper.inside.includes(sentence) &&
        filled.some((each) => each.code === code),
    );
  return [...found.filter((each) => !isFilled(each)), ...filled];
}

/** The words given to a function that refuses, put where it puts them. */
function throughWrappers(at: ParsedFile, through: ReadonlyMap<string, Wrapper>): Refusal[] {
  const found: Refusal[] = [];
  new Visitor({
    CallExpression({ callee, arguments: given }) {
      const wrapper = callee.type === 'Identifier' ? through.get(callee.name) : undefined;
      const words = wrapper && given[wrapper.param];
      if (!wrapper || !isOne(words)) return;
      for (const said of patternsOf(words, at))
        for (const sentence of wrapper.inside)
          found.push({
            file: at.file,
            code: wrapper.code,
            sentence: sentence.replace(`⟨${wrapper.name}⟩`, () => said),
          });
    },
  }).visit(at.program);
  return found;
}

function paramsOf({ params }: Func): { readonly name: string }[] {
  return params.map((param) => ({ name: param.type === 'Identifier' ? param.name : '-' }));
}

function isOne(node: ESTree.Argument | undefined): node is ESTree.Expression {
  return node !== undefined && node.type !== 'SpreadElement';
}

function codeOf(node: ESTree.Expression, at: ParsedFile): string {
  return patternsOf(node, at)[0] ?? '…';
}

function propertyOf(
  properties: readonly ESTree.ObjectPropertyKind[],
  name: string,
): ESTree.Expression | undefined {
  for (const each of properties)
    if (
      each.type === 'Property' &&
      each.key.type === 'Identifier' &&
      each.key.name === name &&
      !each.shorthand
    )
      return each.value;
  return undefined;
}
