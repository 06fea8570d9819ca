import { dirname, join } from 'node:path/posix';
import { type ESTree, parseSync, Visitor } from 'vite';
import { textOf } from '../imports.ts';

export type Func = ESTree.Function | ESTree.ArrowFunctionExpression;

/** A source file, with what its names stand for. */
export interface ParsedFile {
  readonly file: string;
  readonly text: string;
  readonly program: ESTree.Program;
  /** functions by name, wherever in the file they are */
  readonly functions: ReadonlyMap<string, Func>;
  /** what a name was made with; undefined for one made more than once */
  readonly constants: ReadonlyMap<string, ESTree.Expression | undefined>;
  /** what a name was taken out of: a property of what a call gives back */
  readonly takenOut: ReadonlyMap<string, TakenOut>;
  /** names from other files of ours: which file, and what they are called there */
  readonly imports: ReadonlyMap<string, { readonly file: string; readonly name: string }>;
}

interface TakenOut {
  readonly call: ESTree.CallExpression;
  readonly property: string;
}

const parsed = new Map<string, ParsedFile>();

/** Parses a file once. @param file from the root, with `/` */
export function parsedFile(file: string): ParsedFile {
  let known = parsed.get(file);
  if (!known) {
    known = parse(file);
    parsed.set(file, known);
  }
  return known;
}

function parse(file: string): ParsedFile {
  const text = textOf(file);
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  const functions = new Map<string, Func>();
  const constants = new Map<string, ESTree.Expression | undefined>();
  const takenOut = new Map<string, TakenOut>();
  const imports = new Map<string, { file: string; name: string }>();
  new Visitor({
    FunctionDeclaration(node) {
      if (node.id) functions.set(node.id.name, node);
    },
    VariableDeclarator({ id, init }) {
      if (id.type === 'ObjectPattern' && init?.type === 'CallExpression')
        for (const { property, name } of namesIn(id)) takenOut.set(name, { call: init, property });
      if (id.type !== 'Identifier' || !init) return;
      if (init.type === 'ArrowFunctionExpression') functions.set(id.name, init);
      else constants.set(id.name, constants.has(id.name) ? undefined : init);
    },
    ImportDeclaration({ source, specifiers }) {
      if (!source.value.startsWith('.')) return;
      for (const { local, ...one } of specifiers)
        if (one.type === 'ImportSpecifier' && one.imported.type === 'Identifier')
          imports.set(local.name, { file: join(dirname(file), source.value), name: one.imported.name });
    },
  }).visit(program);
  return { file, text, program, functions, constants, takenOut, imports };
}

function namesIn({ properties }: ESTree.ObjectPattern): { property: string; name: string }[] {
  return properties.flatMap((each) =>
    each.type === 'Property' && each.key.type === 'Identifier' && each.value.type === 'Identifier'
      ? [{ property: each.key.name, name: each.value.name }]
      : [],
  );
}

/** What a function gives back: every expression behind a return of its own. */
export function givenBack({ body }: Func): ESTree.Expression[] {
  if (!body) return [];
  if (body.type !== 'BlockStatement') return [body];
  const found: ESTree.Expression[] = [];
  let inside = 0;
  const enter = () => {
    inside++;
  };
  const leave = () => {
    inside--;
  };
  new Visitor({
    FunctionDeclaration: enter,
    'FunctionDeclaration:exit': leave,
    FunctionExpression: enter,
    'FunctionExpression:exit': leave,
    ArrowFunctionExpression: enter,
    'ArrowFunctionExpression:exit': leave,
    ReturnStatement({ argument }) {
      if (inside === 0 && argument) found.push(argument);
    },
  }).visit({
    type: 'Program',
    body: [body],
    sourceType: 'module',
    hashbang: null,
    start: 0,
    end: 0,
    comments: [],
  } as never);
  return found;
}
