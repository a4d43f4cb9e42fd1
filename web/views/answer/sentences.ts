/** The sentences of the difference on show, and the first one of each other difference. */
export interface SentencesTold {
  readonly chosen: readonly string[];
  readonly others: readonly string[];
}

/**
 * The engine gives the same number of sentences for each difference, in their order: the answer, then what it is at the
 * other totals where there are any.
 */
export function sentencesOf(sentences: readonly string[], differences: number, d: number): SentencesTold {
  if (differences < 2) return { chosen: sentences, others: [] };
  const each = sentences.length / differences;
  return {
    chosen: sentences.slice(d * each, (d + 1) * each),
    others: sentences.filter((_, i) => i % each === 0 && i !== d * each),
  };
}
