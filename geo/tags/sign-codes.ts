/** What a sign holds vehicles to. */
export type SignQuantity = 'height' | 'width' | 'length' | 'mass' | 'axle';

export interface SignMeaning {
  readonly quantity: SignQuantity;
  /** for goods vehicles only */
  readonly goods: boolean;
  /** what stands behind the code: `[3.8]`, `-3.8` */
  readonly rest: string;
}

/** Of each country's catalogue, from memory: the signs that limit sizes and masses. Each is matched at the beginning. */
const CODES: Readonly<Record<string, readonly (readonly [code: RegExp, SignQuantity, goods?: 'goods'])[]>> = {
  DE: [
    [/^262(?!\d)/, 'mass'],
    [/^263(?!\d)/, 'axle'],
    [/^264(?!\d)/, 'width'],
    [/^265(?!\d)/, 'height'],
    [/^266(?!\d)/, 'length'],
  ],
  AT: [
    [/^§?\s*(52[./]?\s*)?9a/i, 'width'],
    [/^§?\s*(52[./]?\s*)?9b/i, 'height'],
    [/^§?\s*(52[./]?\s*)?9c/i, 'mass'],
    [/^§?\s*(52[./]?\s*)?9d/i, 'axle'],
  ],
  CH: [
    [/^2\.16(?!\d)/, 'mass'],
    [/^2\.17(?!\d)/, 'axle'],
    [/^2\.18(?!\d)/, 'width'],
    [/^2\.19(?!\d)/, 'height'],
    [/^2\.20(?!\d)/, 'length'],
  ],
  GB: [
    [/^629\.2A?(?!\d)/i, 'height'],
    [/^(530|531\.[12]|532\.[23])A?(?!\d)/i, 'height'],
    [/^629\.1(?!\d)/, 'length'],
    [/^629A?(?![.\d])/i, 'width'],
    [/^626\.2A?(?!\d)/i, 'mass'],
    [/^622\.1A?(?!\d)/i, 'mass', 'goods'],
  ],
  FR: [
    [/^B10a?(?!\d)/i, 'length'],
    [/^B11(?!\d)/i, 'width'],
    [/^B12(?!\d)/i, 'height'],
    [/^B13a/i, 'axle'],
    [/^B13(?!\d)/i, 'mass'],
  ],
  NL: [
    [/^C0?17(?!\d)/i, 'length'],
    [/^C0?18(?!\d)/i, 'width'],
    [/^C0?19(?!\d)/i, 'height'],
    [/^C0?20(?!\d)/i, 'axle'],
    [/^C0?21(?!\d)/i, 'mass'],
  ],
  BE: [
    [/^C21(?!\d)/i, 'mass'],
    [/^C25(?!\d)/i, 'length'],
    [/^C27(?!\d)/i, 'width'],
    [/^C29(?!\d)/i, 'height'],
  ],
  ES: [
    [/^R-?201(?!\d)/i, 'mass'],
    [/^R-?202(?!\d)/i, 'axle'],
    [/^R-?203(?!\d)/i, 'length'],
    [/^R-?204(?!\d)/i, 'width'],
    [/^R-?205(?!\d)/i, 'height'],
  ],
  PL: [
    [/^B-?15(?!\d)/i, 'width'],
    [/^B-?16(?!\d)/i, 'height'],
    [/^B-?17(?!\d)/i, 'length'],
    [/^B-?18(?!\d)/i, 'mass'],
    [/^B-?19(?!\d)/i, 'axle'],
  ],
  US: [
    [/^W12-2/i, 'height'],
    [/^R12-[1-6]/i, 'mass'],
  ],
};

/** What a sign's code means, undefined for a sign that limits no size or mass, or is not known here. */
export function readSignCode(country: string | undefined, code: string): SignMeaning | undefined {
  if (country === undefined || !Object.hasOwn(CODES, country)) return undefined;
  for (const [pattern, quantity, goods] of CODES[country] ?? []) {
    const found = pattern.exec(code);
    if (found !== null) return { quantity, goods: goods === 'goods', rest: code.slice(found[0].length) };
  }
  return undefined;
}
