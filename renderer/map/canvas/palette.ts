const NAMES = [
  'map-land',
  'map-sea',
  'map-water',
  'map-water-line',
  'map-farm',
  'map-grass',
  'map-park',
  'map-heath',
  'map-wood',
  'map-wood-ink',
  'map-wetland',
  'map-sand',
  'map-residential',
  'map-industrial',
  'map-paved',
  'map-building',
  'map-building-line',
  'map-road',
  'map-road-main',
  'map-road-trunk',
  'map-road-thin',
  'map-casing',
  'map-casing-minor',
  'map-casing-main',
  'map-rail',
  'map-path',
  'paper',
  'paper-raised',
  'ink',
  'ink-soft',
  'ink-faint',
  'drive',
  'barred',
  'tight',
  'unknown',
  'care',
  'face',
] as const;

/** The style sheet's own values, as canvases need them. */
export type Palette = Readonly<Record<(typeof NAMES)[number], string>>;

export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element);
  return Object.fromEntries(
    NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()]),
  ) as Palette;
}

/** Calls when the page turns to another palette. @returns what ends it */
export function onPaletteChange(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-palette'] });
  return () => observer.disconnect();
}
