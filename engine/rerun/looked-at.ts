import { Cone, coneOf } from "../evaluate/cone.js";
import { checkList, checkShown } from "../template/checks-sheet.js";
import type { Cell, Model } from "../template/model.js";
import { rolesOf } from "../template/role-plan.js";

/** Does a cell but list the checks and errors of other cells? */
const lists = ({ apart, table }: Cell): boolean =>
  apart || table === checkList || table === checkShown;

/**
 * What a rerun looks at in the jobs of a model: the figures and checks that it tells, all cells that a bid must have
 * without error to stand, and the cells that filters name. What merely lists these on sheet Checks is left out where
 * nothing asks for it: the lists hold no error themselves, since each of their formulas asks before whether what it reads is one.
 */
export function lookedAt(model: Model, named: readonly string[]): Cone {
  const looked = coneOf(model, rolesOf(model).targets).filter((cell) => !lists(cell));
  return new Cone(model, [...looked.map(({ id }) => id), ...named]);
}
