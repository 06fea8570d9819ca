import { bareKg } from '../../../geo/load/weigh/say-plates.ts';
import { FLOOR_M, type Layout } from './layout.ts';
import { type Block, HEAD_SHARE } from './stack.ts';

const LETTERED_FROM_PX = 22;

/** One item as a square whose area goes by its mass; a person with head and shoulders; hollow for what is taken off. */
export function BlockShape({ block, at }: { block: Block; at: Layout }) {
  const { item, person } = block;
  const side = block.sideM * at.pxPerM;
  const [left, top] = [at.x(block.xM) - side / 2, at.y(FLOOR_M + block.upM + block.sideM)];
  const head = (side * HEAD_SHARE) / 2;
  const middle = left + side / 2;
  return (
    <>
      {person ? (
        <path
          class="load-shape"
          d={`M${middle - head} ${top + head}a${head} ${head} 0 0 1 ${2 * head} 0a${head} ${head} 0 0 1 ${-head * 0.5} ${head * 0.86}H${left + side * 0.8}q${side * 0.14} 0 ${side * 0.14} ${side * 0.18}V${top + side}H${left + side * 0.06}V${top + head * 1.86 + side * 0.18}q0 ${-side * 0.18} ${side * 0.14} ${-side * 0.18}H${middle - head * 0.5}a${head} ${head} 0 0 1 ${-head * 0.5} ${-head * 0.86}z`}
        />
      ) : (
        <rect
          class={item.massKg < 0 ? 'load-shape load-shape-off' : 'load-shape'}
          x={left}
          y={top}
          width={side}
          height={side}
        />
      )}
      {side >= LETTERED_FROM_PX && (
        <text class="load-mass" x={middle} y={top + side * labelShare(block)}>
          {bareKg(item.massKg)}
        </text>
      )}
    </>
  );
}

/** Of a person behind another only the head is free. */
function labelShare({ person, row }: Block): number {
  if (!person) return 0.5;
  return row === 0 ? 0.76 : HEAD_SHARE / 2;
}
