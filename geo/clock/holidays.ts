/**
 * Which public holidays the opening-hours library can count, and where its answer depends on a part of the country
 * that a place on a map does not tell us.
 */

/** Countries with one list of public holidays for all (ISO 3166-1 alpha-2, lower case), library version 3.15. */
const NATIONAL = new Set(
  (
    'ar at au be bg br by ca ch ci cn cz de dk ee es fi fr ge gg gi gr hr hu ie im it je jp lt lu lv mc md mt mx na ' +
    'nl no nz pl pt ro rs ru se si sk sm ua us vn za'
  ).split(' '),
);

/**
 * Parts of a country that between them keep every regional holiday the library knows there. Asking each of them
 * finds the days on which the answer differs from one end of the country to the other.
 */
const REGIONS: Readonly<Record<string, readonly string[]>> = {
  ch: ['Tessin', 'Jura', 'Obwalden', 'Neuenburg', 'Glarus', 'Appenzell Innerrhoden', 'Genf'],
  de: ['Bayern', 'Thüringen', 'Berlin', 'Sachsen', 'Brandenburg'],
  es: [
    'País Vasco',
    'Cataluña',
    'La Rioja',
    'Illes Balears',
    'Galicia',
    'Extremadura',
    'Comunidad de Madrid',
    'Ceuta',
    'Castilla-La Mancha',
    'Castilla y León',
    'Cantabria',
    'Asturias',
    'Aragón',
    'Andalucía',
  ],
  fr: ['Moselle'],
  gb: ['England', 'Wales', 'Scotland', 'Northern Ireland'],
};

/** Countries without a list for the whole: only their parts can be asked. */
const REGIONS_ONLY = new Set(['gb']);

/**
 * The parts of a country whose holidays together decide; '' is the country's own list.
 * @param country ISO 3166-1 alpha-2, any case
 * @returns empty when no holidays are known there
 */
export function holidayRegions(country: string | undefined): readonly string[] {
  const code = country?.toLowerCase() ?? '';
  const regions = REGIONS[code] ?? [];
  if (REGIONS_ONLY.has(code)) return regions;
  return NATIONAL.has(code) ? ['', ...regions] : [];
}
