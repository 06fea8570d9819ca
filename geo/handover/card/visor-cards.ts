import { dayInWords } from '../../clock/print-dates.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { cardFigures, sayWidths, tailOneIn } from '../document/big-figures.ts';
import type { BigFigure } from '../document/document.ts';
import { type Markup, markup } from '../page/markup.ts';
import { type Faces, wholePage } from '../page/whole-page.ts';
import { visorStyle } from './visor-style.ts';

interface VisorOptions {
  readonly faces: Faces;
  /** ISO 8601: a card that was changed after it is no longer this one */
  readonly made: string;
  /** number of the sheet that it goes with */
  readonly sheet?: string;
}

/** A name of more letters stands in smaller ones, that it is whole and takes no room from the figures. */
const LONG_NAME = 32;

/**
 * Visor cards of one vehicle or a whole fleet, a card a page, to be cut out. Height at least 40 mm high, in feet and
 * inches first, as the British height notice asks; every other figure at least 15 mm.
 */
export function visorCards(cards: readonly VehicleCard[], { faces, made, sheet }: VisorOptions): string {
  const day = dayInWords(made.slice(0, 10));
  const source = `Of the vehicle’s card as on ${day}${sheet === undefined ? '' : `, with sheet ${sheet}`}.`;
  const title =
    cards.length === 1 ? `Visor card: ${cards[0]?.name ?? ''}` : `Visor cards of ${cards.length} vehicles`;
  return wholePage({
    title,
    style: visorStyle(faces),
    faces,
    body: markup`${cards.map((card) => visorCard(card, source))}`,
  });
}

function visorCard(card: VehicleCard, source: string): Markup {
  const [height, ...others] = cardFigures(card);
  const tail = tailOneIn(card);
  return markup`<article class="sheet"><section class="card">${cutMarks()}
<div class="head"><h1${card.name.length > LONG_NAME ? markup` class="long"` : undefined}><bdi>${card.name}</bdi></h1><p class="source">${source}</p></div>
${height === undefined ? undefined : markup`<div class="height"><p class="what">${height.what}</p><p class="tall">${sized(height.imperial)}</p><p class="tall">${sized(height.metric)}</p></div>`}
<div class="rest">${others.map(figure)}${tail === undefined ? undefined : figure({ what: 'The tail touches on a ramp steeper than', metric: tail, imperial: '' })}</div>
<p class="widths">${sayWidths(card)}</p>
</section>
<footer><span class="bar"></span><p>This bar is 50 mm; if it is not, print at 100 %. One side, cut along the marks. Sizes are rounded up.</p></footer></article>`;
}

function figure({ what, metric, imperial }: BigFigure): Markup {
  return markup`<div class="figure"><p class="what">${what}</p><p class="big">${sized(metric)}</p><p class="big">${sized(imperial)}</p></div>`;
}

/** A figure with its unit small behind it: the figure is what has to be read from the seat. */
function sized(text: string): Markup {
  const [figureText = '', ...unit] = text.split(' ');
  // "1 in 8" is all figure
  return unit.length === 1 ? markup`${figureText}<small> ${unit.join(' ')}</small>` : markup`${text}`;
}

/** Corners to cut along, outside the card. */
function cutMarks(): Markup {
  return markup`${['nw', 'ne', 'sw', 'se'].map((corner) => markup`<i class="cut cut-${corner}"></i>`)}`;
}
