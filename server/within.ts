/** What the work comes to; `otherwise` where that takes longer than so many milliseconds. */
export async function within<Answer>(ms: number, work: Promise<Answer>, otherwise: Answer): Promise<Answer> {
  let timer: NodeJS.Timeout | undefined;
  const over = new Promise<Answer>((resolve) => {
    timer = setTimeout(resolve, ms, otherwise);
  });
  return Promise.race([work, over]).finally(() => clearTimeout(timer));
}
