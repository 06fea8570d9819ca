import type { Element } from '../../../../geo/fetch/line/element.ts';

/** The countries among the areas of an answer, by ISO 3166-1 code; one without a code by its name. */
export function countriesIn(elements: readonly Element[]): string[] {
  return elements.flatMap(({ type, tags }) => {
    if (type !== 'relation' || tags?.['admin_level'] !== '2') return [];
    const code = tags['ISO3166-1:alpha2'] ?? tags['ISO3166-1'] ?? tags['name'];
    return code === undefined ? [] : [code];
  });
}
