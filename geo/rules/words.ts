/** What a finding says, and what to do about it. */
export interface Words {
  readonly say: string;
  readonly advice: string;
}
