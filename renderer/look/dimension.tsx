/** A dimension line with its text, as on a drawing. Coordinates in pixels of the figure. */
export function Dimension({
  from,
  to,
  across,
  upright,
  text,
  side = 'left',
}: {
  /** the two ends, along the line */
  from: number;
  to: number;
  /** where the line lies, on the other axis */
  across: number;
  upright: boolean;
  text: string;
  /** an upright line has its text on this side */
  side?: 'left' | 'right';
}) {
  const middle = (from + to) / 2;
  const point = (along: number, off: number) =>
    upright ? `${across + off} ${along}` : `${along} ${across + off}`;
  const tick = (along: number) => `M${point(along, -4)}L${point(along, 4)}`;
  return (
    <g class="dimension">
      <path d={`M${point(from, 0)}L${point(to, 0)}${tick(from)}${tick(to)}`} />
      {upright ? (
        <text
          x={side === 'left' ? across - 8 : across + 8}
          y={middle + 4}
          text-anchor={side === 'left' ? 'end' : 'start'}
        >
          {text}
        </text>
      ) : (
        <text x={middle} y={across - 6} text-anchor="middle">
          {text}
        </text>
      )}
    </g>
  );
}
