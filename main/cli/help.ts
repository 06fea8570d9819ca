export const HELP = `lanegauge: will this vehicle get along this drive?

  lanegauge check --route DRIVE.gpx --map MAP [--map MAP2] --vehicle CARD.json
      [--load LOAD.json]      what is on board: what exceeds a plate is held against the road too
      [--track NAME|NUMBER]   which track, where the file holds several
      [--leave 2027-06-12T09:30]   when the drive starts, local time
      [--country GB]          where the place cannot tell the country
      [--json]                print the report alone, as JSON
      [--out FOLDER]          also write report.json, report.txt, findings.geojson and drive.gpx there

  lanegauge load --vehicle CARD.json --load LOAD.json
      [--json]                what each axle carries, against its plate

  MAP is an OpenStreetMap extract: .osm.pbf, .osm, .osm.gz or Overpass JSON, told apart by content.
  Exit code: 0 nothing barred or over, 1 something barred or over its plate, 2 input could not be used, 130 stopped by Ctrl-C.

Signs and the road decide. Map data is incomplete; this is an aid for planning, not a permit.
`;
