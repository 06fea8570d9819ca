import { bearing, distance } from '@turf/turf';
import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { turnDeg } from '../../geo/earth/angles.ts';
import { bearingDeg, distanceM } from '../../geo/earth/sphere.ts';

const lat = fc.double({ min: -89, max: 89, noNaN: true });
const lon = fc.double({ min: -180, max: 180, noNaN: true });

// References: Karney's geodesics on WGS 84 (geographiclib-geodesic) and Turf's haversine on the same sphere.
describe('distances against reference libraries', () => {
  const wgs84 = geodesic.Geodesic.WGS84;

  it('are within 0.6 % of the WGS 84 ellipsoid', () => {
    fc.assert(
      fc.property(lat, lon, lat, lon, (a, b, c, d) => {
        const ellipsoidal = wgs84.Inverse(a, b, c, d).s12 ?? 0;
        fc.pre(ellipsoidal > 0.01);
        expect(Math.abs(distanceM(a, b, c, d) / ellipsoidal - 1)).toBeLessThan(0.006);
      }),
    );
  });

  it('are within 0.6 % for legs of metres, as a drive has them', () => {
    const step = fc.double({ min: -0.002, max: 0.002, noNaN: true });
    fc.assert(
      fc.property(lat, lon, step, step, (a, b, dLat, dLon) => {
        const ellipsoidal = wgs84.Inverse(a, b, a + dLat, b + dLon).s12 ?? 0;
        fc.pre(ellipsoidal > 0.1);
        expect(Math.abs(distanceM(a, b, a + dLat, b + dLon) / ellipsoidal - 1)).toBeLessThan(0.006);
      }),
    );
  });

  it('and bearings equal Turf’s', () => {
    fc.assert(
      fc.property(lat, lon, lat, lon, (a, b, c, d) => {
        const turf = distance([b, a], [d, c], { units: 'meters' });
        // both lose digits between antipodes
        fc.pre(turf > 1 && turf < 19_900_000);
        expect(Math.abs(distanceM(a, b, c, d) / turf - 1)).toBeLessThan(1e-9);
        expect(turnDeg(bearingDeg(a, b, c, d), (bearing([b, a], [d, c]) + 360) % 360)).toBeLessThan(1e-6);
      }),
    );
  });
});
