/** The part of Overpass's language that our questions use, parsed: anything else throws. */
export type Statement =
  | { readonly is: 'union'; readonly parts: readonly Statement[]; readonly into: string }
  | { readonly is: 'out'; readonly from: string; readonly what: 'body' | 'tags' }
  | { readonly is: 'in'; readonly lat: number; readonly lon: number; readonly into: string }
  | {
      readonly is: 'find';
      readonly type: 'node' | 'way' | 'rel';
      readonly by: readonly Filter[];
      readonly into: string;
    };

export type Filter =
  | { readonly is: 'tag'; readonly key: string; readonly fits: (value: string) => boolean }
  | {
      readonly is: 'around';
      readonly text: string;
      readonly radiusM: number;
      readonly line: readonly [number, number][];
    }
  | {
      readonly is: 'box';
      readonly south: number;
      readonly west: number;
      readonly north: number;
      readonly east: number;
    }
  | {
      readonly is: 'of';
      readonly link: 'w' | 'bw' | 'r' | 'pivot';
      readonly set: string;
      readonly role?: string;
    }
  | { readonly is: 'members'; readonly most: number };

export interface Query {
  readonly timeoutS: number;
  readonly maxBytes: number;
  readonly statements: readonly Statement[];
}

export function parseQuery(text: string): Query {
  const settings = /^\[out:json\]\[timeout:(\d+)\]\[maxsize:(\d+)\];/u.exec(text);
  if (!settings) throw new Error(`no settings: ${text.slice(0, 60)}`);
  const parser = new Parser(text.slice(settings[0].length));
  return { timeoutS: Number(settings[1]), maxBytes: Number(settings[2]), statements: parser.statements() };
}

class Parser {
  private readonly text: string;
  private at = 0;

  constructor(text: string) {
    this.text = text;
  }

  statements(): Statement[] {
    const found: Statement[] = [];
    while (this.takes(/\s*/uy) && this.at < this.text.length && this.text[this.at] !== ')')
      found.push(this.statement());
    return found;
  }

  private statement(): Statement {
    if (this.takes(/\(/uy)) {
      const parts = this.statements();
      this.needs(/\)/uy);
      return { is: 'union', parts, into: this.into() };
    }
    const out = this.takes(/(?:\.(\w+) )?out (body|tags);/uy);
    if (out) return { is: 'out', from: out[1] ?? '_', what: out[2] as 'body' | 'tags' };
    const place = this.takes(/is_in\((-?[\d.]+),(-?[\d.]+)\)/uy);
    if (place) return { is: 'in', lat: Number(place[1]), lon: Number(place[2]), into: this.into() };
    const type = this.needs(/(node|way|rel)/uy)[1] as 'node' | 'way' | 'rel';
    const by: Filter[] = [];
    for (let filter = this.filter(); filter; filter = this.filter()) by.push(filter);
    return { is: 'find', type, by, into: this.into() };
  }

  private filter(): Filter | undefined {
    const tag = this.takes(/\["([^"]+)"(?:(=|~)"([^"]*)")?\]/uy);
    if (tag) {
      const [, key = '', how, value = ''] = tag;
      const pattern = new RegExp(value, 'u');
      const fits = (is: string) => (how === undefined ? true : how === '=' ? is === value : pattern.test(is));
      return { is: 'tag', key, fits };
    }
    const around = this.takes(/\(around:([\d.]+)((?:,-?[\d.]+)+)\)/uy);
    if (around) {
      const numbers = (around[2] ?? '').slice(1).split(',').map(Number);
      const line = numbers.flatMap((lat, i): [number, number][] =>
        i % 2 === 0 ? [[lat, numbers[i + 1] ?? 0]] : [],
      );
      return { is: 'around', text: around[0], radiusM: Number(around[1]), line };
    }
    const box = this.takes(/\((-?[\d.]+),(-?[\d.]+),(-?[\d.]+),(-?[\d.]+)\)/uy);
    if (box) {
      const [south = 0, west = 0, north = 0, east = 0] = box.slice(1).map(Number);
      return { is: 'box', south, west, north, east };
    }
    const of = this.takes(/\((w|bw|r|pivot)\.(\w+)(?::"(\w*)")?\)/uy);
    if (of) {
      const link = of[1] as 'w' | 'bw' | 'r' | 'pivot';
      return { is: 'of', link, set: of[2] ?? '', ...(of[3] === undefined ? {} : { role: of[3] }) };
    }
    const most = this.takes(/\(if:count_members\(\)<=(\d+)\)/uy);
    return most ? { is: 'members', most: Number(most[1]) } : undefined;
  }

  private into(): string {
    return this.needs(/(?:->\.(\w+))?;/uy)[1] ?? '_';
  }

  private takes(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found) this.at = pattern.lastIndex;
    return found ?? undefined;
  }

  private needs(pattern: RegExp): RegExpExecArray {
    const found = this.takes(pattern);
    if (!found) throw new Error(`not understood: ${this.text.slice(this.at, this.at + 60)}`);
    return found;
  }
}
