/** Place of the vehicle cards. */
export function VehicleEditor() {
  return <div class="vehicle-editor" />;
}
