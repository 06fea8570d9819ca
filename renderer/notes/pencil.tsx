/** The firm's own, drawn in pencil: a ring by hand that does not quite close. In a box of 24 by 24. */
export const PENCIL =
  'M15.6 3.9C9 1.7 3.3 5.6 3.2 11.7c-.1 5.8 4.6 9.6 9.6 9.2 5.2-.4 8.6-4.6 8.1-9.7C20.6 7.4 18 4.3 13.9 3.2';

export function PencilMark({ size = 16 }: { size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true" class="pencil">
      <path d={PENCIL} />
    </svg>
  );
}
