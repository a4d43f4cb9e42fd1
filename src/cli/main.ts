import { once } from "node:events";
import { existsSync, fstatSync, realpathSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Command as Commander, CommanderError } from "commander";
import { InputError, UsageError } from "../problem.ts";
import { printable } from "../printable.ts";
import { commands, type Command } from "./commands.ts";
import { exitCodes, type Context, type Sink } from "./context.ts";
import { flagOption, type GivenFlags } from "./flags.ts";
import { standardInput } from "./standardInput.ts";
import { codeOf, writeErrorSaid } from "./systemError.ts";
import { version } from "./version.ts";

/**
 * The command line as a function: arguments and streams in, exit code out.
 *
 * @param args without node and script
 * @returns 0 done, 1 a file is wrong, 2 usage, 3 a fault of ours. Never throws, never prints a stack trace.
 */
export async function run(args: readonly string[], context: Context): Promise<number> {
  try {
    refuseLong(args);
    const ended = { code: exitCodes.done as number };
    await commandLine(context, ended).parseAsync([...args], { from: "user" });
    return ended.code;
  } catch (error) {
    return tellError(error, context);
  }
}

/** No path and no answer is longer, letters: what is goes through no pattern. Ours. */
const longestArgument = 5000;

function refuseLong(args: readonly string[]): void {
  const long = args.find(({ length }) => length > longestArgument);
  if (long === undefined) return;
  const flag = [long, args[args.indexOf(long) - 1]].find((one) => one?.startsWith("--"));
  const what = flag === undefined ? "" : `${flag.slice(0, 40).split("=", 1)[0]!}: `;
  throw new UsageError(
    `${what}expected at most ${longestArgument} letters, found ${long.length}; shorten it, or put it into a file`,
  );
}

/** Where a command leaves its exit code. */
interface Ended {
  code: number;
}

function commandLine(context: Context, ended: Ended): Commander {
  const program = new Commander("rootfront")
    .description("How much more stored water deeper roots reach, what yield that is, and how sure it is.")
    .version(version, "--version", "print the version")
    .helpOption("--help", "print this help")
    .helpCommand(false)
    .showSuggestionAfterError(true);
  wire(program, context);
  for (const command of commands) program.addCommand(subcommand(command, context, ended));
  program.addHelpText(
    "after",
    "\nStart with a quick question, or with a file to change:\n" +
      '  rootfront compare --texture "silt loam" --rain "12..14 in" \\\n' +
      '    --crop "grain sorghum" --deeper "2 in"\n' +
      "  rootfront new my-field.json\n\n" +
      "Each command has its own help: rootfront compare --help\n" +
      "Exit codes: 0 done, 1 a file is wrong, 2 a command or flag is wrong,\n" +
      "3 a fault of ours.",
  );
  return program;
}

function subcommand(command: Command, context: Context, ended: Ended): Commander {
  const made = new Commander(command.name)
    .description(command.summary)
    .helpOption("--help", "print this help")
    .allowExcessArguments(false)
    .addHelpText("after", `\nExample:\n  ${command.example}`);
  wire(made, context);
  if (command.argument !== null) made.argument(command.argument, command.argumentSays);
  for (const name of command.flags) made.addOption(flagOption(name));
  made.action(async (file: string | undefined, flags: GivenFlags) => {
    const { run } = await command.load();
    try {
      ended.code = (await run(context, file, flags)) ?? exitCodes.done;
    } catch (error) {
      throw error instanceof InputError && file !== undefined ? new InputError(error.problems, file) : error;
    }
  });
  return made;
}

/** Commander writes to our streams, throws instead of leaving, and says an error in one line. */
function wire(program: Commander, { stdout, stderr }: Context): void {
  program.exitOverride().configureOutput({
    writeOut: (text) => stdout.write(text),
    writeErr: (text) => stderr.write(text),
    outputError: (text, write) =>
      write(
        `rootfront: ${printable(
          text
            .replace(/^error: /, "")
            .split("\n")
            .map((line) => line.trim())
            .join(" ")
            .trim()
            .split("'")
            .map((part) => (part.length > 200 ? `${part.slice(0, 57)}...` : part))
            .join("'"),
        )}\n`,
      ),
    getOutHelpWidth: () => 80,
    getErrHelpWidth: () => 80,
  });
}

function tellError(error: unknown, { stderr }: Context): number {
  if (error instanceof InputError) {
    stderr.write(`${error.message}\n`);
    return error.problems.every(({ field }) => field.startsWith("--"))
      ? exitCodes.usage
      : exitCodes.wrongInput;
  }
  if (error instanceof UsageError) {
    stderr.write(`rootfront: ${printable(error.message)}\n`);
    return exitCodes.usage;
  }
  // Commander has said its piece; help and version are thrown too, with 0.
  if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.done : exitCodes.usage;
  if (isWriteError(error)) return tellWriteError(error, stderr);
  const what = error instanceof Error ? error.message.split("\n")[0] : String(error);
  stderr.write(
    `rootfront: a fault of ours (${printable(what ?? "")}); please report it with the command and the file that led here\n`,
  );
  return exitCodes.fault;
}

type SystemError = Error & { readonly code: string };

/** Standard output, or what it is led into, took no more. */
function isWriteError(error: unknown): error is SystemError {
  return (
    error instanceof Error && "syscall" in error && error.syscall === "write" && codeOf(error) !== "unknown"
  );
}

function tellWriteError({ code }: SystemError, stderr: Sink): number {
  // A reader that has seen enough, such as `head`, closes the pipe: no fault of anyone's.
  if (code === "EPIPE") return exitCodes.done;
  stderr.write(`rootfront: the result cannot be written to standard output: ${writeErrorSaid(code)}\n`);
  return exitCodes.wrongInput;
}

/** Runs on the process's own streams and sets its exit code; the streams are left to empty themselves. */
export async function runProcess(): Promise<void> {
  process.stdout.on("error", (error: SystemError) => process.exit(tellWriteError(error, process.stderr)));
  // Nobody is left to tell.
  process.stderr.on("error", () => undefined);
  process.exitCode = await run(process.argv.slice(2), {
    stdout: standardOutput(),
    stderr: process.stderr,
    cwd: process.cwd(),
    isTerminal: process.stderr.isTTY === true,
    stdin: standardInput,
    stopsWhenAsked,
  });
}

/** Into a file it is written here to the last byte: Node's own stream gives up after a part when the disk is full. */
function standardOutput(): Sink {
  const descriptor = process.stdout.fd;
  if (!fstatSync(descriptor).isFile())
    return {
      write: (text) => process.stdout.write(text),
      drained: async () => void (await once(process.stdout, "drain")),
    };
  return { write: (text) => writeFileSync(descriptor, text) };
}

/** A batch system asks with SIGTERM before it kills. The second wish ends the process at once. */
function stopsWhenAsked(): AbortSignal {
  const asked = new AbortController();
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => asked.abort());
  return asked.signal;
}

const called = process.argv[1];
if (called !== undefined && existsSync(called) && realpathSync(called) === fileURLToPath(import.meta.url)) {
  await runProcess();
}
