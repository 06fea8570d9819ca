import { lookUp } from './look-up.ts';
import type { WidthClass, WidthDefaults } from './rule.ts';

/** Where `width`, `est_width` and `lanes` are silent: Great Britain and Ireland. Metres. */
export const BRITISH_WIDTHS: WidthDefaults = {
  laneM: by(3.65, 3.65, 3.5, 3.1, 2.9, 2.4, 2.6, 3.5, 3.0),
  carriagewayM: by(11.0, 7.3, 7.0, 6.2, 5.8, 4.0, 5.5, 3.5, 3.0),
};

/** The same for the European mainland. Metres. */
export const CONTINENTAL_WIDTHS: WidthDefaults = {
  laneM: by(3.75, 3.5, 3.5, 3.25, 3.0, 2.5, 2.75, 3.5, 3.0),
  carriagewayM: by(7.5, 7.0, 7.0, 6.5, 6.0, 4.5, 5.5, 3.5, 3.0),
};

/** The same for the United States and Canada. Metres. */
export const AMERICAN_WIDTHS: WidthDefaults = {
  laneM: by(3.66, 3.66, 3.5, 3.5, 3.3, 3.0, 3.0, 3.5, 3.0),
  carriagewayM: by(7.3, 7.3, 7.0, 7.0, 6.6, 6.0, 7.3, 3.5, 3.0),
};

const BY_HIGHWAY: Readonly<Record<string, WidthClass>> = {
  living_street: 'residential',
  road: 'unclassified',
  pedestrian: 'residential',
  busway: 'service',
};
const CLASSES: readonly WidthClass[] = [
  'motorway',
  'trunk',
  'primary',
  'secondary',
  'tertiary',
  'unclassified',
  'residential',
  'service',
  'track',
];

/** The class whose default widths stand for a `highway` value; the narrowest road class for what is unknown. */
export function widthClassOf(highway: string): WidthClass {
  const plain = highway.replace(/_link$/, '');
  return CLASSES.find((name) => name === plain) ?? lookUp(BY_HIGHWAY, plain) ?? 'track';
}

function by(...m: readonly [number, number, number, number, number, number, number, number, number]) {
  const [motorway, trunk, primary, secondary, tertiary, unclassified, residential, service, track] = m;
  return { motorway, trunk, primary, secondary, tertiary, unclassified, residential, service, track };
}
