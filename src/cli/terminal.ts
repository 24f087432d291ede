/** Where a command writes: results to `out`, progress and findings to `err`. Each adds the line's end. */
export type Terminal = {
  out(words: string): void;
  err(words: string): void;
  /** Whether `err` may be coloured. */
  readonly colour: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
};

/** This process's own terminal. Colours only where a person reads them and has not said no (no-color.org). */
export function thisTerminal(): Terminal {
  // A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
  for (const stream of [process.stdout, process.stderr]) stream.on("error", stopAtClosedPipe);
  return {
    out: (words) => void process.stdout.write(`${words}\n`),
    err: (words) => void process.stderr.write(`${words}\n`),
    colour: process.stderr.isTTY === true && !process.env["NO_COLOR"],
    env: process.env,
  };
}

function stopAtClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== "EPIPE") throw error;
  process.exit(process.exitCode);
}

/** Words in a colour, where colours are wanted. */
export type Paint = (style: "bad" | "look" | "quiet" | "strong", words: string) => string;

// ECMA-48, "select graphic rendition".
const codes = { bad: "1;31", look: "1;33", quiet: "2", strong: "1" } as const;

export function painter(colour: boolean): Paint {
  return (style, words) => (colour ? `\u001b[${codes[style]}m${words}\u001b[0m` : words);
}
