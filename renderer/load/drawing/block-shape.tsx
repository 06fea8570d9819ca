import { bareKg } from '../../../geo/load/weigh/say-plates.ts';
import { inLines } from '../../../geo/units/in-lines.ts';
import { plainLine } from '../../../geo/units/text.ts';
import { FLOOR_M, type Layout } from './layout.ts';
import { type Block, HEAD_SHARE } from './stack.ts';

/** Lower than this there is no room for a figure, and for a name above it. */
const FIGURE_FROM_PX = 15;
const NAME_FROM_PX = 27;
const LETTER_PX = 5.7;
const LETTERS_LEAST = 7;
const LINE_PX = 13;

/** One item: a box whose area goes by its mass, a person with head and shoulders; hollow for what is taken off. */
export function BlockShape({ block, at }: { block: Block; at: Layout }) {
  const { item, person } = block;
  const [wide, high] = [block.wideM * at.pxPerM, block.highM * at.pxPerM];
  const [left, top] = [at.x(block.xM) - wide / 2, at.y(FLOOR_M + block.upM + block.highM)];
  return (
    <>
      {person ? (
        <path class="load-shape load-person" d={figureOf(left, top, high)} />
      ) : (
        <rect
          class={item.massKg < 0 ? 'load-shape load-shape-off' : 'load-shape'}
          x={left}
          y={top}
          width={wide}
          height={high}
        />
      )}
      <Lettering block={block} middle={left + wide / 2} top={top} wide={wide} high={high} />
    </>
  );
}

interface Box {
  readonly middle: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
}

/** The name and the mass under it, as far as there is room for them. */
function Lettering({ block, middle, top, wide, high }: Box & { block: Block }) {
  const { item, person, row } = block;
  // of a person the trunk; of one behind another only the head is free
  const [from, tall] = person ? (row > 0 ? [0, HEAD_SHARE] : [HEAD_SHARE * 0.95, 1 - HEAD_SHARE]) : [0, 1];
  const [y, room] = [top + from * high, tall * high];
  if (wide < FIGURE_FROM_PX + 5 || room < FIGURE_FROM_PX) return null;
  const letters = Math.floor((wide - (person ? 8 : 5)) / LETTER_PX);
  const name = plainLine(item.name);
  // half a word on somebody's chest says nothing; of a thing its beginning does, where it is more than a syllable
  const fits = person ? name.length <= letters : letters >= LETTERS_LEAST;
  const named = row === 0 && fits && room >= NAME_FROM_PX;
  const lines = named ? inLines(name, letters, Math.floor((room - FIGURE_FROM_PX) / LINE_PX)) : [];
  const word = person ? 'load-mass load-mass-person' : 'load-mass';
  const firstY = y + room / 2 - (lines.length * LINE_PX) / 2;
  return (
    <>
      {lines.map((line, i) => (
        <text key={line} class={`${word} load-name`} x={middle} y={firstY + i * LINE_PX}>
          {line}
        </text>
      ))}
      <text class={word} x={middle} y={firstY + lines.length * LINE_PX + (named ? 1 : 0)}>
        {bareKg(item.massKg)}
      </text>
    </>
  );
}

/** Head and shoulders within a square. */
function figureOf(left: number, top: number, side: number): string {
  const head = (side * HEAD_SHARE) / 2;
  const middle = left + side / 2;
  return `M${middle - head} ${top + head}a${head} ${head} 0 0 1 ${2 * head} 0a${head} ${head} 0 0 1 ${-head * 0.5} ${head * 0.86}H${left + side * 0.8}q${side * 0.14} 0 ${side * 0.14} ${side * 0.18}V${top + side}H${left + side * 0.06}V${top + head * 1.86 + side * 0.18}q0 ${-side * 0.18} ${side * 0.14} ${-side * 0.18}H${middle - head * 0.5}a${head} ${head} 0 0 1 ${-head * 0.5} ${-head * 0.86}z`;
}
