/** A small GPX file around the given content. */
export function gpx(content: string, attributes = 'xmlns="http://www.topografix.com/GPX/1/1"'): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="t" ${attributes}>\n${content}\n</gpx>\n`;
}

export const TWO_POINTS = '<trkpt lat="50" lon="8"/><trkpt lat="50.01" lon="8.01"/>';

export function track(points = TWO_POINTS, name = 'Lake'): string {
  return `<trk><name>${name}</name><trkseg>${points}</trkseg></trk>`;
}
