import type { Rounding } from '../../geo/units/print.ts';
import type { Settings } from '../../main/contract/settings.ts';

const NOISE = 1e-6;

/** `46 cm`, whole, rounded as told; a true minus sign. */
export function cmText(m: number, rounding: Rounding): string {
  return `${whole(m * 100, rounding)} cm`;
}

/** Centimetres, inches, or both, as the window's units are: `46 cm`, `18 in`, `46 cm (18 in)`. */
export function shortText(m: number, rounding: Rounding, units: Settings['units']): string {
  const inches = `${whole(m / 0.0254, rounding)} in`;
  if (units === 'metric') return cmText(m, rounding);
  return units === 'imperial' ? inches : `${cmText(m, rounding)} (${inches})`;
}

function whole(value: number, rounding: Rounding): string {
  const rounded =
    rounding === 'down'
      ? Math.floor(value + NOISE)
      : rounding === 'up'
        ? Math.ceil(value - NOISE)
        : Math.round(value);
  return rounded < 0 ? `−${-rounded}` : String(rounded === 0 ? 0 : rounded);
}

/** `3.4 m`, `11 ft`, or both: how far, where a centimetre means nothing. */
export function metresText(m: number, units: Settings['units']): string {
  const [metres, feet] = [`${m.toFixed(m < 10 ? 2 : 1)} m`, `${(m / 0.3048).toFixed(1)} ft`];
  return units === 'metric' ? metres : units === 'imperial' ? feet : `${metres} (${feet})`;
}
