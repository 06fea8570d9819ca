import { SaxesParser } from 'saxes';
import { fail, ok, type Problem, type Result } from '../../result.ts';
import { refuseRoot } from './gpx-refusals.ts';
import { xmlNames } from './xml-names.ts';

/** One element as it opens. `line` is 1-based and counts from the start of the text. */
export interface XmlElement {
  readonly local: string;
  /** namespace, '' for none */
  readonly uri: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly line: number;
}

/** Told of the document's content in order. A problem returned ends the reading with it. */
export interface XmlVisitor {
  open(element: XmlElement): Problem | undefined;
  /** character data and CDATA alike, possibly in pieces */
  text(text: string, line: number): Problem | undefined;
  close(): void;
}

/** Deeper than anything but an attack; each level costs memory. */
const MAX_DEPTH = 100_000;
const MAX_ATTRIBUTES = 1_000;

/** Leaves the parser from inside its callbacks; never leaves this file. */
class Stop extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/**
 * Walks a whole XML document and vouches for it: well formed, names bound, one root, no DOCTYPE (so no entities of
 * its own). White space before the document and NUL padding after it are passed over.
 *
 * Visitors hear of elements before the end is proved: trust nothing they gathered unless the result is ok.
 */
export function walkXml(text: string, visitor: XmlVisitor): Result<undefined> {
  const lone = /\p{Surrogate}/u.exec(text);
  if (lone) return damaged(countLines(text.slice(0, lone.index)) + 1, 'half a character');
  const lead = /^[\uFEFF \t\r\n]*/u.exec(text)?.[0] ?? '';
  const parser = new SaxesParser({ xmlns: false });
  const names = xmlNames();
  let depth = 0;
  let attributes = 0;
  parser.line = 1 + countLines(lead);

  const stop = (result: { readonly error: Problem }): never => {
    throw new Stop(result.error);
  };
  parser.on('error', (error) => stop(damaged(parser.line, plainReason(error.message))));
  parser.on('doctype', (doctype) =>
    stop(
      isWebPage(doctype)
        ? refuseRoot('html', parser.line)
        : fail(
            'gpx.doctype',
            `Line ${parser.line}: the file has a DOCTYPE, which GPX does not use and which can hide or fetch content; remove it or export the drive again.`,
          ),
    ),
  );
  parser.on('attribute', () => {
    if (++attributes > MAX_ATTRIBUTES) stop(damaged(parser.line, 'an element with too many attributes'));
  });
  parser.on('opentag', (tag) => {
    attributes = 0;
    if (++depth > MAX_DEPTH) stop(damaged(parser.line, `elements nested more than ${MAX_DEPTH} deep`));
    const name = names.enter(tag.name, tag.attributes);
    if (typeof name === 'string') return stop(damaged(parser.line, name));
    const problem = visitor.open({
      local: name.local,
      uri: name.uri,
      attributes: tag.attributes,
      line: parser.line,
    });
    if (problem) stop({ error: problem });
  });
  parser.on('closetag', () => {
    depth--;
    names.leave();
    visitor.close();
  });
  const hear = (piece: string) => {
    const problem = depth > 0 ? visitor.text(piece, parser.line) : undefined;
    if (problem) stop({ error: problem });
  };
  parser.on('text', hear);
  parser.on('cdata', hear);

  try {
    parser.write(withoutPadding(text.slice(lead.length))).close();
    return ok(undefined);
  } catch (thrown) {
    if (thrown instanceof Stop) return { ok: false, error: thrown.problem };
    throw thrown;
  }
}

/** Loggers that write whole blocks leave NULs after the end, some with a line end behind them. */
function withoutPadding(text: string): string {
  let end = text.length;
  while (end > 0 && '\0\r\n'.includes(text.charAt(end - 1))) end--;
  return text.slice(0, end);
}

function damaged(line: number, reason: string) {
  return fail(
    'gpx.damaged',
    `Line ${line}: the file is not sound XML (${reason}), so it may be cut short or damaged; export the drive again.`,
  );
}

function plainReason(message: string): string {
  return message.replace(/^\d+:\d+: /u, '').replace(/\.$/u, '');
}

function countLines(text: string): number {
  return text.match(/\r\n|\r|\n/gu)?.length ?? 0;
}

/** `html`, as pages name themselves: most begin so, and an error page saved as GPX is a common slip. */
function isWebPage(doctype: string): boolean {
  return /^\s*html\b/i.test(doctype);
}
