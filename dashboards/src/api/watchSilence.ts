/** A live link says nothing of itself for so long at most before it is asked for a word. */
const ASK_AFTER_MS = 60_000;
/** And answers within this, or it is gone. */
const ANSWER_WITHIN_MS = 20_000;

/**
 * Notices a link that went without a word, as where a phone leaves a network: neither end is told, and what is shown would
 * stand for ever. Call `heard` whenever it said anything; `ask` is called after a long silence, `giveUp` where no word
 * follows. It begins with the first `heard`.
 */
export function watchSilence(ask: () => void, giveUp: () => void): { heard(): void; stop(): void } {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = () => clearTimeout(timer);
  return {
    heard() {
      stop();
      timer = setTimeout(() => {
        timer = setTimeout(giveUp, ANSWER_WITHIN_MS);
        ask();
      }, ASK_AFTER_MS);
    },
    stop,
  };
}
