// What the table of an arrangement says wrong, in words, and what makes it right. Knows the table only, no ring.
import type { Column, TableProblem } from "#model/arrangement-table.ts";
import type { Saying } from "./rule.ts";
import { listed, quoted } from "./wording.ts";

/** @param more further rows with the same */
export function tableWords(path: string, problem: TableProblem, more: number): Saying {
  const also = more === 0 ? "" : ` The same is so in ${more === 1 ? "1 more row" : `${more} more rows`}.`;
  const at = "line" in problem ? `${path}, line ${problem.line}: ` : "";
  const said = wordsOf(path, problem);
  return { message: `${at}${said.message}`, why: `${said.why}${also}`, remedy: said.remedy };
}

function wordsOf(path: string, problem: TableProblem): Required<Pick<Saying, "message" | "why" | "remedy">> {
  switch (problem.what) {
    case "empty":
      return {
        message: `${path} holds no part.`,
        why: "A table has a line with the names of its columns, and below it one line for each part.",
        remedy: `Begin it with ${HEADER}.`,
      };
    case "no column":
      return {
        message: `${path} has no column ${problem.column === "mass" ? "“mass” or “moment”" : "“serial”"}.`,
        why: `Its first line says: ${listed(problem.found.filter((cell) => cell !== "").map(quoted), "and")}.`,
        remedy: `Name the columns in the first line: ${HEADER}.`,
      };
    case "column twice":
      return {
        message: `${path} has two columns for ${NAMES[problem.column]}.`,
        why: "Nobody can know which of them counts.",
        remedy: "Take one of them out, or give it another name.",
      };
    case "unclosed quote":
      return {
        message: "a quotation mark is not closed.",
        why: "All that follows it would be one cell.",
        remedy: "Close it, or write two of them where one is meant.",
      };
    case "header unit":
      return {
        message: `${path}: ${quoted(problem.unit)} is no unit of ${NAMES[problem.column]}.`,
        why: "The unit in the first line holds for each number below it.",
        remedy:
          problem.nearest.length > 0
            ? `Nearest: ${problem.nearest.join(", ")}.`
            : `Write one such as ${EXAMPLES[problem.column]}.`,
      };
    case "no serial":
      return {
        message: "the part has no serial.",
        why: "The fitter finds the part by it.",
        remedy: "Give each part the serial that stands on it.",
      };
    case "no position":
      return {
        message: `${quoted(problem.text)} is no position.`,
        why: "Positions are counted in whole numbers from 1.",
        remedy: "Write the number alone, or leave the cell empty until the part has a place.",
      };
    case "fixed nowhere":
      return {
        message: `${quoted(problem.serial)} is fixed, and has no position.`,
        why: "What is fixed stays in the position of its row.",
        remedy: "Give it a position, or leave its “fixed” cell empty.",
      };
    default:
      return weightWords(problem);
  }
}

function weightWords(
  problem: Extract<TableProblem, { readonly text: string; readonly column: Column }>,
): Required<Pick<Saying, "message" | "why" | "remedy">> {
  const { column, text } = problem;
  const example = column === "mass" ? "2.304 kg" : "1200 g·mm";
  const what = column === "mass" ? "mass" : "mass moment";
  switch (problem.what) {
    case "no unit":
      return {
        message: `${quoted(text)} has no unit.`,
        why: "Kilograms, grams and pounds look alike without one.",
        remedy: `Write ${example}, or the unit once in the first line: “${column} (${EXAMPLES[column]})”.`,
      };
    case "decimal mark":
      return {
        message: `the comma in ${quoted(text)} can be read two ways.`,
        why: "It may part thousands, or stand for the decimal point.",
        remedy: "Write numbers with a point and no thousands mark; or save with semicolons, and all with a comma.",
      };
    case "not above zero":
      return {
        message: `${quoted(text)} is not above zero.`,
        why: `Each part has a ${what}.`,
        remedy: "Weigh the part, and write what the scale shows.",
      };
    case "wrong kind":
      return {
        message: `${quoted(text)} is no ${what}.`,
        why: `The column “${column}” holds a ${what} in each row.`,
        remedy: `Write it as ${example}${column === "mass" ? ", or name the column “moment”" : ", or name the column “mass”"}.`,
      };
    case "no value":
      return {
        message: text === "" ? `the part has no ${what}.` : `${quoted(text)} is no ${what}.`,
        why: "What a part weighs decides what its place does to the balance.",
        remedy: `Write one number with its unit, such as ${example}.`,
      };
  }
}

const HEADER = "position,serial,mass";

const NAMES: Readonly<Record<Column, string>> = {
  position: "the position",
  serial: "the serial",
  mass: "mass",
  moment: "mass moment",
  fixed: "what is fixed",
};

const EXAMPLES: Readonly<Record<Column, string>> = { mass: "kg", moment: "g·mm", position: "", serial: "", fixed: "" };
