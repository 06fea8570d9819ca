import './figures.css';
import { type Sum, scaleFigureOf } from '../../../geo/report/deciding.ts';
import type { Finding } from '../../../geo/report/report.ts';
import { report } from '../../state/check.ts';
import { HeightFigure } from './height-figure.tsx';
import { LengthFigure } from './length-figure.tsx';
import { MassFigure } from './mass-figure.tsx';
import { WidthFigure } from './width-figure.tsx';

/** The sum drawn to scale, for the subjects whose limit is a size or a mass. The words beside it say the same. */
export function Figure({ finding, sum }: { finding: Finding; sum: Sum }) {
  const card = report.value?.vehicle;
  const figure = scaleFigureOf(finding);
  if (!card || !figure) return null;
  switch (figure.kind) {
    case 'mass':
      return <MassFigure card={card} sum={sum} {...figure} />;
    case 'height':
      return <HeightFigure card={card} sum={sum} {...figure} />;
    case 'width':
      return <WidthFigure card={card} sum={sum} {...figure} />;
    case 'length':
      return <LengthFigure card={card} sum={sum} {...figure} />;
  }
}
