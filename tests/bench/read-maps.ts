import { makeLargeMap } from './make-large-map.ts';

const data = process.env['LANEGAUGE_DATA'];
if (!data) console.log('LANEGAUGE_DATA is not set: nothing to read');
else console.log(await makeLargeMap(`${data}/maps`, 36));
