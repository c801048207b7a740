import { type Progress, terminalProgress } from './progress.ts';

/** Where a command prints, and what it ends with. */
export interface Terminal {
  /** Whole lines, for standard output. */
  out(text: string): void;
  /** Whole lines, for standard error. */
  err(text: string): void;
  readonly progress: Progress;
  /** What the process ends with: 0 where it did what was asked. */
  exitCode: number;
}

export function ourTerminal(): Terminal {
  return {
    out: (text) => console.log(text),
    err: (text) => console.error(text),
    progress: terminalProgress(process.stderr),
    exitCode: 0,
  };
}

/** Prints what came of a command: words for a person, or one JSON document. */
export function say(terminal: Terminal, asJson: boolean | undefined, result: object, words: string): void {
  terminal.out(asJson === true ? JSON.stringify(result) : words);
}
