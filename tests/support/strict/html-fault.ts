/** What a page that the driver takes along may be made of: elements, and the attributes that any of them may have. */
const ELEMENTS = new Set(
  (
    'html head meta title style body main header footer section article aside div p span strong b i bdi em small h1 h2 h3 ' +
    'ul ol li dl dt dd table thead tbody tr th td caption a br hr figure figcaption nav details summary ' +
    'svg g path line polyline polygon rect circle ellipse text tspan defs clipPath use symbol marker pattern'
  ).split(' '),
);
const ATTRIBUTES =
  /^(?:lang|charset|http-equiv|content|name|class|id|href|role|aria-[a-z]+|scope|colspan|rowspan|style|viewBox|width|height|d|x|y|x1|y1|x2|y2|cx|cy|r|rx|ry|dx|dy|points|transform|fill|stroke(?:-[a-z]+)?|text-anchor|dominant-baseline|clip-path|preserveAspectRatio|start|value|open|opacity|fill-opacity|font-size|font-weight|textLength|lengthAdjust|marker-[a-z]+|start)$/u;
const VOID = new Set(['meta', 'br', 'hr']);
/** The only entities that an escaped text holds; a bare ampersand is a text that was not escaped. */
const BARE_AMPERSAND = /&(?!(?:amp|lt|gt|quot|#39);)/u;
const TAG = /<(\/?)([A-Za-z][A-Za-z0-9]*)((?:\s+[A-Za-z][\w:-]*="[^"<>]*")*)\s*(\/?)>/uy;
const ATTRIBUTE = /([A-Za-z][\w:-]*)="([^"<>]*)"/gu;
/** What may steer a reader's eye or a browser: control, direction and line-breaking characters, halves of characters. */
const UNSEEN = /[\p{Cf}\p{Cs}\p{Zl}\p{Zp}]|(?!\n)\p{Cc}/u;

/**
 * Reads a page as a stranger to the code that wrote it would, more strictly than a browser: every tag of the list above
 * and closed in order, attributes of the list in double quotes, texts escaped, addresses places or telephones alone.
 * @returns what is wrong; undefined for nothing
 */
export function htmlFault(page: string): string | undefined {
  if (!page.startsWith('<!doctype html>\n')) return 'it does not begin as a page';
  const unseen = UNSEEN.exec(page);
  if (unseen) return `it holds U+${unseen[0].codePointAt(0)?.toString(16)}`;
  const open: string[] = [];
  let at = '<!doctype html>\n'.length;
  while (at < page.length) {
    const next = page.indexOf('<', at);
    const text = page.slice(at, next < 0 ? page.length : next);
    if (open.at(-1) !== 'style' && BARE_AMPERSAND.test(text)) return `a bare ampersand in ${near(text)}`;
    if (text.includes('>') && open.at(-1) !== 'style') return `a bare > in ${near(text)}`;
    if (next < 0) break;
    TAG.lastIndex = next;
    const tag = TAG.exec(page);
    if (!tag) return `no tag at ${near(page.slice(next))}`;
    const fault = tagFault(tag, open);
    if (fault !== undefined) return fault;
    at = TAG.lastIndex;
  }
  return open.length === 0 ? undefined : `<${open.at(-1)}> is not closed`;
}

function tagFault([, end, name = '', attributes = '', closed]: RegExpExecArray, open: string[]) {
  if (!ELEMENTS.has(name)) return `an element <${name}>`;
  if (end) return open.pop() === name ? undefined : `</${name}> closes another`;
  if (!closed && !VOID.has(name)) open.push(name);
  for (const [, attribute = '', value = ''] of attributes.matchAll(ATTRIBUTE)) {
    if (!ATTRIBUTES.test(attribute)) return `an attribute ${attribute} of <${name}>`;
    if (BARE_AMPERSAND.test(value)) return `a bare ampersand in ${attribute} of <${name}>`;
    if (attribute === 'href' && !/^(?:#[\w-]+|geo:-?[\d.]+,-?[\d.]+|tel:\+?[\d*#]+)$/u.test(value))
      return `an address ${near(value)}`;
    if (attribute === 'style' && /url\(|expression|@import/iu.test(value)) return `a style ${near(value)}`;
  }
  return undefined;
}

function near(text: string): string {
  return JSON.stringify(text.trim().slice(0, 80));
}
