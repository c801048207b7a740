interface Waiting<Question, Answer> {
  readonly question: Question;
  resolve(answer: Answer): void;
  reject(error: unknown): void;
}

/**
 * Asks the questions of concurrent requests together: while some are being answered, what else is asked gathers for
 * the next round. Each answer is from after its question was put. On a quiet line nothing waits. `askAll` answers in
 * the order of the questions.
 */
export function gathered<Question, Answer>(
  askAll: (questions: readonly Question[]) => Promise<readonly Answer[]>,
): (question: Question) => Promise<Answer> {
  let waiting: Waiting<Question, Answer>[] = [];
  let underWay = false;

  const next = async (): Promise<void> => {
    const asked = waiting;
    waiting = [];
    try {
      const answers = await askAll(asked.map(({ question }) => question));
      for (const [i, { resolve }] of asked.entries()) resolve(answers[i]);
    } catch (error) {
      for (const { reject } of asked) reject(error);
    }
    underWay = false;
    begin();
  };
  const begin = (): void => {
    if (underWay || waiting.length === 0) return;
    underWay = true;
    // After the requests that this turn of the loop reads.
    setImmediate(() => void next());
  };
  return (question) =>
    new Promise((resolve, reject) => {
      waiting.push({ question, resolve, reject });
      begin();
    });
}
