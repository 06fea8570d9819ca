import type { Finding } from '../../../geo/report/report.ts';
import { report } from '../../state/state.ts';
import { sumOf } from '../figures-in-words.ts';
import type { RowProps } from '../row.tsx';
import { HeightFigure } from './height-figure.tsx';
import { LengthFigure } from './length-figure.tsx';
import { MassFigure } from './mass-figure.tsx';
import { WidthFigure } from './width-figure.tsx';

/** The sum drawn to scale, for the subjects whose limit is a size or a mass. The words beside it say the same. */
export function Figure({ finding, units }: { finding: Finding; units: RowProps['units'] }) {
  const sum = sumOf(finding, units);
  const card = report.value?.vehicle;
  const { limit, spare, vehicle } = finding;
  if (!sum || !card || !limit || !vehicle || spare === undefined) return null;
  const needed = limit.value - spare;
  if (!(limit.value > 0 && needed > 0)) return null;
  if (limit.unit === 'kg')
    return (
      <MassFigure card={card} limitKg={limit.value} neededKg={needed} sum={sum} axle={axleOf(vehicle.what)} />
    );
  const sizes = { card, limitM: limit.value, neededM: needed, sum };
  if (limit.unit !== 'm') return null;
  if (finding.subject === 'height' || finding.subject === 'tunnel') return <HeightFigure {...sizes} />;
  if (finding.subject === 'width' || finding.subject === 'barrier') return <WidthFigure {...sizes} />;
  if (finding.subject === 'length') return <LengthFigure {...sizes} />;
  return null;
}

function axleOf(what: string): 'front' | 'rear' | undefined {
  if (!/axle/.test(what)) return undefined;
  return /front/.test(what) ? 'front' : 'rear';
}
