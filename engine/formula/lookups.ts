import { count, yesno } from "../units/quantity.js";
import { columnOf, formula, type NamedFormula, oneLike } from "./named-formula.js";

const source = "definition";
const keyed = { keys: columnOf("keys"), key: oneLike("keys") };
const numbers = { column: columnOf("column", { numbers: true }), ...keyed };

/**
 * The look-ups that every template can use. An error in a key, and one in the rows that a
 * figure is made of, stays an error in every program: none of them passes it over. Texts are
 * compared whole, without regard to case, and * or < in them mean nothing.
 *
 * "Does a key stand there" is asked by comparing row by row, since COUNTIF reads * and < in
 * texts and passes over errors, and ISNUMBER(MATCH(...)) says no to an error.
 */
export const lookups: readonly NamedFormula[] = [
  formula(
    "COUNT_WHERE",
    "How many rows have this key",
    keyed,
    count,
    "SUMPRODUCT((keys=key)*1)",
    source,
  ),
  formula("LISTED", "Whether a row has this key", keyed, yesno, "COUNT_WHERE(keys,key)>0", source),
  formula(
    "PICK",
    "The column's value in the first row with this key; an error where none has it",
    { column: columnOf("column"), ...keyed },
    oneLike("column"),
    "INDEX(column,MATCH(key,keys,0))",
    source,
  ),
  formula(
    "PICK_OR",
    "The column's value in the first row with this key, or another value where none has it",
    { column: columnOf("column"), ...keyed, otherwise: oneLike("column") },
    oneLike("column"),
    "IF(LISTED(keys,key),PICK(column,keys,key),otherwise)",
    source,
  ),
  formula(
    "PLACE_OR_ZERO",
    "The row, from 1, that first has this key; 0 where none has it",
    keyed,
    count,
    "IF(LISTED(keys,key),MATCH(key,keys,0),0)",
    source,
  ),
  formula(
    "SUM_WHERE",
    "The column's sum over the rows with this key",
    numbers,
    oneLike("column"),
    "SUMPRODUCT((keys=key)*1,column)",
    source,
  ),
  formula(
    "LARGEST_WHERE",
    "The column's largest number among the rows with this key; 0 where none has it",
    numbers,
    oneLike("column"),
    "IF(LISTED(keys,key),MAXIFS(column,keys,key),0)",
    source,
  ),
  formula(
    "LEAST_WHERE",
    "The column's least number among the rows with this key; 0 where none has it",
    numbers,
    oneLike("column"),
    "IF(LISTED(keys,key),MINIFS(column,keys,key),0)",
    source,
  ),
];
