import { isGpxElement } from '../../../geo/drive/gpx/gpx-names.ts';
import type { XmlElement, XmlVisitor } from '../../../geo/drive/gpx/strict-xml.ts';

/**
 * As much of a DOM as a GPX parser asks for: GPX's own elements by local name. Elements of other namespaces and
 * extensions are left out, so that nothing of theirs can pass for a name or a point.
 */
export class LightElement {
  readonly tagName: string;
  readonly childNodes: LightElement[] = [];
  /** the element’s own text */
  innerHTML = '';
  readonly #attributes: Readonly<Record<string, string>>;

  constructor(tagName: string, attributes: Readonly<Record<string, string>>) {
    this.tagName = tagName;
    this.#attributes = attributes;
  }

  getAttribute(name: string): string | null {
    return this.#attributes[name] ?? null;
  }

  querySelector(tagName: string): LightElement | null {
    return find(this, tagName, 1)[0] ?? null;
  }

  querySelectorAll(tagName: string): LightElement[] {
    return find(this, tagName, Number.POSITIVE_INFINITY);
  }
}

/** Elements below one in document order, so many at most, without recursion: files may nest deeply. */
function find({ childNodes }: LightElement, tagName: string, most: number): LightElement[] {
  const found: LightElement[] = [];
  const open = childNodes.toReversed();
  for (let element = open.pop(); element && found.length < most; element = open.pop()) {
    if (element.tagName === tagName) found.push(element);
    for (let i = element.childNodes.length - 1; i >= 0; i--) open.push(element.childNodes[i]!);
  }
  return found;
}

/** Hears GPX elements and makes a document of them, to be looked at once the text is known to be sound. */
export class LightDomBuilder implements XmlVisitor {
  readonly document = new LightElement('#document', {});
  readonly #open: (LightElement | undefined)[] = [this.document];
  #rootUri: string | undefined;

  open({ local, uri, attributes }: XmlElement): undefined {
    this.#rootUri ??= uri;
    const parent = this.#open.at(-1);
    const kept = parent && local !== 'extensions' && isGpxElement(this.#rootUri, uri);
    const element = kept ? new LightElement(local, attributes) : undefined;
    if (element) parent?.childNodes.push(element);
    this.#open.push(element);
  }

  text(piece: string): undefined {
    const element = this.#open.at(-1);
    // white space between elements is most of a file
    if (element && (element.innerHTML !== '' || piece.trim() !== '')) element.innerHTML += piece;
  }

  close(): void {
    this.#open.pop();
  }
}
