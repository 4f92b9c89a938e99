import type { InputDeclaration, TableBlock } from "../template/declare.js";
import { inSystem, ruleInWords } from "../template/implied.js";
import type { Model } from "../template/model.js";
import { type UnitSystem, unitOf } from "../units/quantity.js";
import { askedFor } from "./asked-for.js";
import { entrySchema } from "./trail/schema.js";

/** Characters of a text input, far from what a cell holds: pages join several of them. */
const longestText = 2000;
/** It stands in the footer of each page, where an ampersand counts twice. */
const longestJob = 100;

type Schema = Record<string, unknown>;

/** The JSON Schema (draft 7) of a job record for one template and one system of units. */
export function jobSchema(model: Model): Schema {
  const { template, system } = model;
  const inputs: Record<string, Schema> = {};
  for (const block of askedFor(model)) {
    if (block.kind === "table") {
      const rows = tableSchema(block, system);
      if (rows !== undefined) inputs[block.name] = rows;
    } else {
      for (const [name, declaration] of Object.entries(block.cells)) {
        if (declaration.kind === "input") inputs[name] = inputSchema(declaration, system);
      }
    }
  }
  return {
    $schema: "http://json-schema.org/draft-07/schema#",
    title: `rillbook job record: ${template.title}, version ${template.version}, ${system}`,
    type: "object",
    required: ["rillbook", "job", "template", "version", "units", "inputs"],
    additionalProperties: false,
    properties: {
      $schema: { type: "string" },
      rillbook: { const: 1 },
      job: {
        type: "string",
        minLength: 1,
        maxLength: longestJob,
        description: "The job's number or name.",
      },
      template: { const: template.name },
      version: { const: template.version },
      units: { const: system },
      about: { type: "string", maxLength: longestText },
      office: { type: "string", description: "Path of the office book, from this file's folder." },
      inputs: { type: "object", additionalProperties: false, properties: inputs },
      ranges: {
        type: "object",
        description: "How far inputs may turn out to lie from what the bid says, by name.",
        additionalProperties: rangeSchema,
      },
      guide: { description: "For people; not read." },
      trail: { type: "array", description: "Written by set and take.", items: entrySchema },
    },
  };
}

const rangeSchema: Schema = {
  type: "object",
  required: ["low", "likely", "high"],
  additionalProperties: false,
  properties: {
    low: { type: "number" },
    likely: { type: "number" },
    high: { type: "number" },
  },
  description: "low <= likely <= high, in the unit of the input",
};

function tableSchema(block: TableBlock, system: UnitSystem): Schema | undefined {
  const columns = Object.entries(block.columns).filter(([, { kind }]) => kind === "input");
  if (columns.length === 0) return undefined;
  const properties: Record<string, Schema> = {};
  for (const [key, declaration] of columns) {
    properties[key] = inputSchema(declaration as InputDeclaration, system);
  }
  return {
    type: "array",
    maxItems: block.rows,
    description: block.heading,
    // a null row is blank, and keeps the rows after it in their places
    items: { type: ["object", "null"], additionalProperties: false, properties },
  };
}

function inputSchema(declaration: InputDeclaration, system: UnitSystem): Schema {
  const { quantity, label, note } = declaration;
  const unit = unitOf(quantity, system).name;
  const described = [
    label,
    note,
    unit === "" || quantity.kind === "date" ? undefined : `in ${unit}`,
  ];
  const description = described.filter(Boolean).join("; ");
  if (quantity.kind === "yesno") return { type: ["boolean", "null"], description };
  if (quantity.kind === "text") {
    const choices = declaration.choices;
    return Array.isArray(choices)
      ? { type: ["string", "null"], enum: [...choices, null], description }
      : { type: ["string", "null"], maxLength: longestText, description };
  }
  if (quantity.kind === "date") {
    return { type: ["string", "null"], pattern: "^\\d{4}-\\d{2}-\\d{2}$", description };
  }
  return {
    type: [declaration.whole ? "integer" : "number", "null"],
    ...(declaration.least === undefined
      ? {}
      : { minimum: inSystem(declaration.least, declaration, system) }),
    ...(declaration.most === undefined
      ? {}
      : { maximum: inSystem(declaration.most, declaration, system) }),
    description: `${description}; ${ruleInWords(declaration, system)}`,
  };
}
