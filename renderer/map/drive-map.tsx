/** Place of the map. */
export function DriveMap() {
  return <div class="drive-map" />;
}
