import { dialog } from '../state/page.ts';

/** Stands in a view while there is no vehicle card. @param why what the view wants one for, a sentence */
export function NoVehicle({ why }: { why: string }) {
  return (
    <div class="empty">
      <h2>No vehicle yet</h2>
      <p>{why} Enter the first one.</p>
      <p>
        <button
          type="button"
          class="chief"
          onClick={() => {
            dialog.value = 'vehicles';
          }}
        >
          Enter a vehicle…
        </button>
      </p>
    </div>
  );
}
