/** What XML names mean: prefixes resolved as "Namespaces in XML 1.0" has it. Lookup does not grow with nesting. */
export interface XmlNames {
  /**
   * Enters an element.
   * @returns its namespace and local name, or a sentence saying what is wrong with the names
   */
  enter(name: string, attributes: Readonly<Record<string, string>>): { uri: string; local: string } | string;
  /** Leaves the element entered last. */
  leave(): void;
}

const XML_URI = 'http://www.w3.org/XML/1998/namespace';
const XMLNS_URI = 'http://www.w3.org/2000/xmlns/';

/** The namespaces of one document, from its root inwards. */
export function xmlNames(): XmlNames {
  // every prefix has its own pile of meanings, the innermost on top
  const meanings = new Map<string, string[]>([['xml', [XML_URI]]]);
  const declaredBy: (string[] | undefined)[] = [];

  const uriOf = (prefix: string): string | undefined => meanings.get(prefix)?.at(-1);

  function declare(prefix: string, uri: string): string | undefined {
    if (prefix === 'xmlns' || uri === XMLNS_URI) return 'the prefix xmlns cannot be declared';
    if ((prefix === 'xml') !== (uri === XML_URI)) return 'the prefix xml cannot be given another meaning';
    if (prefix !== '' && uri === '') return `the prefix "${prefix}" is declared with nothing`;
    const pile = meanings.get(prefix);
    if (pile) pile.push(uri);
    else meanings.set(prefix, [uri]);
    return undefined;
  }

  function enter(name: string, attributes: Readonly<Record<string, string>>) {
    let declared: string[] | undefined;
    let prefixed: string[] | undefined;
    for (const key in attributes) {
      if (key === 'xmlns' || key.startsWith('xmlns:')) {
        const prefix = key.slice(6);
        const wrong = declare(prefix, attributes[key]!.trim());
        if (wrong) return wrong;
        declared ??= [];
        declared.push(prefix);
      } else if (key.includes(':')) {
        prefixed ??= [];
        prefixed.push(key);
      }
    }
    declaredBy.push(declared);
    return (prefixed && wrongAttribute(prefixed)) ?? resolve(name, uriOf('') ?? '');
  }

  function resolve(name: string, unprefixed: string): { uri: string; local: string } | string {
    const colon = name.indexOf(':');
    if (colon === -1) return { uri: unprefixed, local: name };
    const prefix = name.slice(0, colon);
    const local = name.slice(colon + 1);
    if (prefix === '' || local === '' || local.includes(':')) return `the name "${name}" is malformed`;
    const uri = uriOf(prefix);
    return uri === undefined ? `the prefix "${prefix}" is not declared` : { uri, local };
  }

  function wrongAttribute(names: readonly string[]): string | undefined {
    const seen = new Set<string>();
    for (const name of names) {
      const resolved = resolve(name, '');
      if (typeof resolved === 'string') return resolved;
      const key = `${resolved.uri} ${resolved.local}`;
      if (seen.has(key)) return `the attribute "${name}" stands twice`;
      seen.add(key);
    }
    return undefined;
  }

  function leave(): void {
    for (const prefix of declaredBy.pop() ?? []) meanings.get(prefix)?.pop();
  }

  return { enter, leave };
}
