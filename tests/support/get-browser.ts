import { findChromium } from '../browser/support/find-chromium.ts';

/** Once, ahead of all tests: two test files that install a browser at the same time would stand in each other's way. */
export default function getBrowser(): void {
  process.env['CHROMIUM_PATH'] = findChromium();
}
