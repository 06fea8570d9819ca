import { computed } from '@preact/signals';
import type { Units } from '../../../geo/units/in-units.ts';
import { settings } from '../../state/kept.ts';

/** Units where there is room for one alone, as in the drawing and under it. */
export const drawnUnits = computed<Units>(() =>
  settings.value.units === 'imperial' ? 'imperial' : 'metric',
);
