/** One line of the table that `npm run bench` ends with. */
export interface TableRow {
  readonly work: string;
  readonly must: string;
  readonly aim: string;
  readonly measured: string;
  /** what it was held against in the same run, and how many times that it is */
  readonly reference: string;
}

const MARK = 'table: ';

/** Prints a row where `npm run bench` finds it again. */
export function tellRow(row: TableRow): void {
  console.log(MARK + JSON.stringify(row));
}

/** A bench's output as its reader sees it, and the rows found in it. */
export function takeRows(output: string): { readonly text: string; readonly rows: readonly TableRow[] } {
  const lines = output.split('\n');
  return {
    text: lines.filter((line) => !line.startsWith(MARK)).join('\n'),
    rows: lines
      .filter((line) => line.startsWith(MARK))
      .map((line) => JSON.parse(line.slice(MARK.length)) as TableRow),
  };
}

/** The rows as a Markdown table. */
export function tableOf(rows: readonly TableRow[]): string {
  const lines = rows.map(
    ({ work, must, aim, measured, reference }) =>
      `| ${work} | ${must} | ${aim} | ${measured} | ${reference} |`,
  );
  return [
    '| work | must | aim | measured | against, same run |',
    '| --- | --- | --- | --- | --- |',
    ...lines,
  ].join('\n');
}
