import { SingleBar } from 'cli-progress';

/** How far a command has come, for whoever watches. */
export interface Progress {
  begin(what: string, total: number): void;
  add(done: number): void;
  end(): void;
}

/** What takes less is over before a bar could be read. */
const SHOWN_AFTER_MS = 2000;

/** A bar on the terminal for what takes longer than two seconds; nothing where no terminal is watching. */
export function terminalProgress(stream: NodeJS.WriteStream): Progress {
  if (!stream.isTTY) return { begin: () => undefined, add: () => undefined, end: () => undefined };
  let bar: SingleBar | null = null;
  let what = '';
  let total = 0;
  let done = 0;
  let began = 0;
  const end = (): void => {
    bar?.stop();
    bar = null;
  };
  return {
    begin: (name, of) => {
      end();
      what = name;
      total = of;
      done = 0;
      began = performance.now();
    },
    add: (more) => {
      done += more;
      if (bar !== null) bar.update(Math.min(done, total));
      else if (performance.now() - began > SHOWN_AFTER_MS) {
        bar = new SingleBar({
          stream,
          format: `${what} [{bar}] {percentage} %, {value} of {total}`,
          barCompleteChar: '#',
          barIncompleteChar: '.',
          hideCursor: true,
        });
        bar.start(total, Math.min(done, total));
      }
    },
    end,
  };
}
