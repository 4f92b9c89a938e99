import type { Value } from "../../formula/value.js";
import { headOf } from "../../job/trail/chain.js";
import { inputsMark, pricesMark } from "../../job/trail/inputs.js";
import { templateMark } from "../../template/mark.js";
import type { Model } from "../../template/model.js";
import { identityProperties } from "../match/identity.js";
import type { Identity } from "./identity.js";

/** The custom properties by which a workbook tells what it is. */
export function propertiesOf(
  model: Model,
  values: readonly Value[],
  identity: Identity,
): Record<string, string> {
  const given = {
    job: identity.job,
    template: identity.template,
    version: String(identity.version),
    templateFile: model.template.own?.file,
    templateMark: model.template.own === undefined ? undefined : templateMark(model.template),
    units: identity.units,
    about: identity.about,
    book: identity.book,
    bookAsOf: identity.bookAsOf,
    bookMark: identity.bookMark,
    office: identity.office,
    trailHead: headOf(identity.trail ?? []),
    inputsMark: inputsMark(model, values),
    pricesMark: pricesMark(model, values),
  } satisfies Record<keyof typeof identityProperties, string | undefined>;
  return Object.fromEntries(
    Object.entries(given).flatMap(([key, value]) =>
      value === undefined
        ? []
        : [[identityProperties[key as keyof typeof identityProperties], value]],
    ),
  );
}
