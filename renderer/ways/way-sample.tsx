import { WAY_PENS, wayPen } from '../look/way-pens.ts';

/** A piece of a way as map and strip draw it, with its number: so the list is read with the drawings. */
export function WaySample({ number }: { number: number }) {
  const { core } = WAY_PENS[wayPen(number - 1)];
  return (
    <svg
      class="way-sample"
      width={58}
      height={24}
      viewBox="0 0 58 24"
      preserveAspectRatio="xMinYMid slice"
      aria-hidden="true"
    >
      <path class="way-casing" d="M26 12h30" />
      <path class="way-core" d="M26 12h30" {...core} />
      <circle class="way-plate" cx={12} cy={12} r={10.5} />
      <text class="way-number" x={12} y={16.5}>
        {number}
      </text>
    </svg>
  );
}
