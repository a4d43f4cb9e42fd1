import { existsSync, realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Command as Commander, CommanderError } from "commander";
import { InputError, UsageError } from "../problem.ts";
import { commands, type Act, type Command } from "./commands.ts";
import { exitCodes, type Context } from "./context.ts";
import { flagOption, type GivenFlags } from "./flags.ts";
import { version } from "./version.ts";

/**
 * The command line as a function: arguments and streams in, exit code out.
 *
 * @param args without node and script
 * @returns 0 done, 1 the input is wrong, 2 usage, 3 a fault of ours. Never throws, never prints a stack trace.
 */
export async function run(args: readonly string[], context: Context): Promise<number> {
  try {
    await commandLine(context).parseAsync([...args], { from: "user" });
    return exitCodes.done;
  } catch (error) {
    return tellError(error, context);
  }
}

function commandLine(context: Context): Commander {
  const program = new Commander("rootfront")
    .description("How much more stored water deeper roots reach, what yield that is, and how sure it is.")
    .version(version, "--version", "print the version")
    .helpOption("--help", "print this help")
    .helpCommand(false)
    .showSuggestionAfterError(true);
  wire(program, context);
  for (const command of commands) program.addCommand(subcommand(command, context));
  program.addHelpText(
    "after",
    "\nStart with a quick question, or with a file to change:\n" +
      '  rootfront compare --texture "silt loam" --rain "12..14 in" \\\n' +
      '    --crop "grain sorghum" --deeper "2 in"\n' +
      "  rootfront new my-field.json\n\n" +
      "Each command has its own help: rootfront compare --help\n" +
      "Exit codes: 0 done, 1 the input is wrong, 2 not called as it can be,\n" +
      "3 a fault of ours.",
  );
  return program;
}

function subcommand(command: Command, context: Context): Commander {
  const made = new Commander(command.name)
    .description(command.summary)
    .helpOption("--help", "print this help")
    .allowExcessArguments(false)
    .addHelpText("after", `\nExample:\n  ${command.example}`);
  wire(made, context);
  if (command.argument !== null) made.argument(command.argument, command.argumentSays);
  for (const name of command.flags) made.addOption(flagOption(name));
  made.action(async (file: string | undefined, flags: GivenFlags) => {
    const { act }: { readonly act: Act } = await command.load();
    await act(context, file, flags);
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
        `rootfront: ${text
          .replace(/^error: /, "")
          .trim()
          .replace(/\s*\n\s*/g, " ")}\n`,
      ),
    getOutHelpWidth: () => 80,
    getErrHelpWidth: () => 80,
  });
}

function tellError(error: unknown, { stderr }: Context): number {
  if (error instanceof InputError) {
    stderr.write(`${error.message}\n`);
    return exitCodes.wrongInput;
  }
  if (error instanceof UsageError) {
    stderr.write(`rootfront: ${error.message}\n`);
    return exitCodes.usage;
  }
  // Commander has said its piece; help and version are thrown too, with 0.
  if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.done : exitCodes.usage;
  const what = error instanceof Error ? error.message.split("\n")[0] : String(error);
  stderr.write(
    `rootfront: a fault of ours (${what}); please report it with the command and the file that led here\n`,
  );
  return exitCodes.fault;
}

/** Runs on the process's own streams and sets its exit code; the streams are left to empty themselves. */
export async function runProcess(): Promise<void> {
  // A reader that has seen enough, such as `head`, closes the pipe: no fault of anyone's.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    process.exit(error.code === "EPIPE" ? exitCodes.done : exitCodes.fault);
  });
  process.exitCode = await run(process.argv.slice(2), {
    stdout: process.stdout,
    stderr: process.stderr,
    cwd: process.cwd(),
    isTerminal: process.stderr.isTTY === true,
  });
}

const called = process.argv[1];
if (called !== undefined && existsSync(called) && realpathSync(called) === fileURLToPath(import.meta.url)) {
  await runProcess();
}
