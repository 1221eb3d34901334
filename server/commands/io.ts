/** What a command of the `spanwright` program may touch besides its arguments. */
export type CommandIo = {
  /** One line to standard output. */
  readonly out: (line: string) => void;
  /** One line to standard error. */
  readonly err: (line: string) => void;
  /** The text of a file; rejects with the system's error when it cannot be read. */
  readonly readFile: (path: string) => Promise<string>;
};

/** Every command file exports `run`. Resolves to the exit code: 0 done, 2 bad input, 1 internal. */
export type RunCommand = (args: string[], io: CommandIo) => Promise<number>;
