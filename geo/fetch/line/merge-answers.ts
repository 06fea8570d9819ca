import type { LineAnswer } from './read-answer.ts';

/**
 * Several answers brought together as one map in the form of one answer, which our reader takes. It comes piece by
 * piece, so that no more than one answer need be held. What several of them hold stands in it once.
 */
export class AnswerMerger {
  private readonly seen = new Set<string>();
  private isFirst = true;

  /** Its beginning. @param baseDate ISO date of the oldest of its parts */
  begin(baseDate: string | undefined): string {
    const osm3s = {
      ...(baseDate === undefined ? {} : { timestamp_osm_base: baseDate }),
      copyright: '© OpenStreetMap contributors, Open Database License 1.0',
    };
    return `{"version":0.6,"generator":"Lanegauge","osm3s":${JSON.stringify(osm3s)},"elements":[`;
  }

  /** What this answer has that none before it had. The newest come first: of two that differ the first is right. */
  add({ elements }: LineAnswer): string {
    const texts: string[] = [];
    for (const element of elements) {
      const key = `${element.type[0]}${element.id}`;
      if (this.seen.has(key)) continue;
      this.seen.add(key);
      texts.push(JSON.stringify(element));
    }
    if (texts.length === 0) return '';
    const text = `${this.isFirst ? '\n' : ',\n'}${texts.join(',\n')}`;
    this.isFirst = false;
    return text;
  }

  /** Its end. @param remark what it lacks, in one sentence, so that nobody takes it for whole */
  end(remark: string | undefined): string {
    return `\n]${remark === undefined ? '' : `,"remark":${JSON.stringify(remark)}`}}\n`;
  }
}

/** The oldest of the dates; undefined where one is missing: what nobody dated may be older than all. */
export function oldestDate(dates: readonly (string | undefined)[]): string | undefined {
  return dates.includes(undefined) ? undefined : dates.toSorted()[0];
}
