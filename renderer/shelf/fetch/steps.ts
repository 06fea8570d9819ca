/** The yeses that fetching whole regions takes, in order. */
export const STEPS = [
  { step: 'index', name: 'The list of regions' },
  { step: 'sizes', name: 'Their sizes' },
  { step: 'maps', name: 'The maps' },
] as const;
