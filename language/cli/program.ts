// The command as a function of its arguments and surroundings: picks the sub-command, words what is wrong with a call, and
// gives the exit status. Touches no process.
import { Command, CommanderError } from "commander";
import about from "../package.json" with { type: "json" };
import type { Work } from "./call.ts";
import { nearestOf } from "./choices.ts";
import { COMMANDS, type Definitions } from "./commands.ts";
import { Refusal, refusalText } from "./refusal.ts";
import { STATUS, type Status, type Surroundings } from "./surroundings.ts";

/**
 * Runs one call; comes back at once where nothing is to be waited for. Never throws or rejects: what cannot be used is said in one line on standard error.
 * @param args without the names of the interpreter and the script
 * @param definitions of the sub-commands that the call can mean
 */
export function run(args: readonly string[], around: Surroundings, definitions: Definitions): Status | Promise<Status> {
  try {
    const status = workOf(args, around, definitions)();
    return typeof status === "number" ? status : status.catch((error: unknown) => tellFault(error, around));
  } catch (error) {
    return tellFault(error, around);
  }
}

/** Says what ended a call before its time. */
export function tellFault(error: unknown, around: Surroundings): Status {
  if (error instanceof Refusal) around.err.write(refusalText(error.message));
  else around.err.write(`sprag: stopped by a fault of its own. Please report these lines:\n${traceOf(error)}\n`);
  return STATUS.unusable;
}

function workOf(args: readonly string[], around: Surroundings, definitions: Definitions): Work {
  let work: Work | undefined;
  const program = new Command("sprag")
    .description("Checks shop maintenance procedures on paper, and writes checklists from them.")
    .version(about.version, "--version", "print the version")
    .helpOption("--help", "print help")
    .helpCommand(false)
    .configureHelp({ subcommandTerm: (command) => command.name() })
    .configureOutput({
      writeOut: (text) => around.out.write(text),
      writeErr: (text) => around.err.write(text),
      outputError: () => {},
      getOutHelpWidth: () => around.out.columns ?? 100,
      getErrHelpWidth: () => around.err.columns ?? 100,
    })
    .addHelpText("after", EXAMPLES);
  refuseWith(program);
  for (const [name, { purpose }] of Object.entries(COMMANDS)) {
    const command = program.command(name).description(purpose);
    refuseWith(command);
    definitions.get(name)?.(
      command,
      (chosen) => {
        work = chosen;
      },
      around,
    );
  }
  try {
    program.parse(isBelowZero(args) ? ["convert", "--", ...args.slice(1)] : args, { from: "user" });
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return () => STATUS.fine;
    throw error;
  }
  return work ?? (() => STATUS.unusable);
}

/** `convert "-40 °C" °F`: a quantity with a sign is no option. */
function isBelowZero([command, quantity = ""]: readonly string[]): boolean {
  return command === "convert" && /^[-−]\s*[\d.]/.test(quantity);
}

const EXAMPLES = `
Exit status: 0 no finding at or above --fail-on, 1 findings, 2 the call or a file could not be used.

Examples:
  sprag new my-shop
  sprag check my-shop
  sprag export my-shop/close-housing.sprag --as checklist --format html --out checklist.html
  sprag explain order.enclosed

sprag COMMAND --help tells more of a command.`;

/** What the parser of arguments finds wrong becomes a refusal in our words. */
function refuseWith(command: Command): void {
  command.exitOverride((error) => {
    if (error.exitCode === 0) throw error;
    // Called with nothing at all: the help has been printed.
    if (error.code === "commander.help") throw new Refusal("give a command.");
    throw new Refusal(`${refusalWords(error, command)} ${helpHint(command)}`);
  });
}

function refusalWords({ code, message }: CommanderError, command: Command): string {
  const named = /'([^']*)'/.exec(message)?.[1] ?? "";
  const flag = /--[\w-]+/.exec(named)?.[0] ?? named;
  switch (code) {
    case "commander.unknownCommand":
      return `no command is called “${command.args[0] ?? ""}”. ${nearestOf(command.args[0] ?? "", Object.keys(COMMANDS))}`;
    case "commander.unknownOption":
      return `${nameOf(command)} has no option ${named}. ${nearestOf(named, optionsOf(command))}`;
    case "commander.optionMissingArgument":
      return `${flag} wants a value behind it.`;
    case "commander.missingArgument":
      return `${nameOf(command)} wants ${named.toUpperCase()} behind it.`;
    case "commander.missingMandatoryOptionValue":
      return `${nameOf(command)} wants ${named.replace(/<(.*)>/, (_, value: string) => value.toUpperCase())}.`;
    case "commander.excessArguments":
      return `${nameOf(command)} has more words behind it than it takes.`;
    default:
      return message.replace(/^error: /, "");
  }
}

function nameOf(command: Command): string {
  return command.parent === null ? command.name() : `${command.parent.name()} ${command.name()}`;
}

function optionsOf(command: Command): readonly string[] {
  return [...command.options.flatMap((option) => option.long ?? []), "--help"];
}

function helpHint(command: Command): string {
  return `See ${nameOf(command)} --help.`;
}

function traceOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
