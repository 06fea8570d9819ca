/** Place of the strip map. */
export function StripMap() {
  return <div class="strip-map" />;
}
