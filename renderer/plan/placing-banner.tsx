import { ClickBanner } from '../look/click-banner.tsx';
import { shownPart } from '../state/parts.ts';
import { places, placing, plan } from '../state/plan.ts';

/** Over the map while a click puts a place. */
export function PlacingBanner({ onMiddle }: { onMiddle(): void }) {
  return (
    <ClickBanner
      shown={plan.value !== undefined && placing.value}
      say={`Click the map to put place ${places.value.length + 1}.`}
      onMiddle={onMiddle}
      onEnd={() => {
        placing.value = false;
        shownPart.value = 'list';
      }}
      end={
        <>
          Done<span class="unseen"> putting places</span>
        </>
      }
    />
  );
}
