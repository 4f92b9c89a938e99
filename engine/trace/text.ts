import type { TraceNode } from "./node.js";

/**
 * A trace for a terminal: each figure with its result and meaning, under it the formula in names
 * and in numbers, and further in its parts.
 *
 * @param width characters to a line; longer lines go on further in
 */
export function traceText(node: TraceNode, width = 100): string {
  return `${linesOf(node, "", width).join("\n")}\n`;
}

function linesOf(node: TraceNode, indent: string, width: number): string[] {
  const inner = `${indent}    `;
  const said = [headOf(node), ...(node.formula === undefined ? [] : formulasOf(node))];
  const lines = said.flatMap((line, i) => wrapped(line, i === 0 ? indent : inner, width));
  for (const line of below(node)) lines.push(...wrapped(line, inner, width));
  // what a formula reads once more further down is said once
  for (const part of node.parts) lines.push(...linesOf(part, `${indent}  `, width));
  return lines;
}

function headOf(node: TraceNode): string {
  const head =
    node.kind === "column" ? `${node.name} (${node.shown})` : `${node.name} = ${node.shown}`;
  const state =
    node.state === "above" ? " (opened above)" : node.state === "closed" ? " (not opened)" : "";
  return `${head}   ${node.label}${state}`;
}

function formulasOf(node: TraceNode): string[] {
  const [names, numbers] = [`= ${node.formula}`, `= ${node.brief}`];
  // a lone constant reads the same both ways
  return names === numbers ? [names] : [names, numbers];
}

function below(node: TraceNode): string[] {
  const lines: string[] = [];
  if (node.parameters !== undefined && node.state === "opened") {
    const named = node.parameters.map(({ name, argument, unit }) => {
      return `${name}${unit === "" ? "" : ` in ${unit}`} is ${argument}`;
    });
    lines.push(`with ${named.join("; ")}`);
  }
  if (node.kind === "column" && node.rows !== undefined && node.parts.length === 0) {
    if (node.rows.length > 0) {
      lines.push(node.rows.map(({ row, shown }) => `row ${row}: ${shown}`).join("; "));
    }
  }
  if (node.origin !== undefined) lines.push(`from: ${node.origin.text}`);
  else if (node.source !== undefined) lines.push(`source: ${node.source}`);
  return lines;
}

/** Breaks a line at spaces and after operators, and indents what follows. */
function wrapped(line: string, indent: string, width: number): string[] {
  const most = Math.max(width - indent.length, 30);
  const lines: string[] = [];
  let rest = line;
  let lead = "";
  while (lead.length + rest.length > most) {
    const room = most - lead.length;
    const cut = cutAt(rest, room);
    lines.push(`${indent}${lead}${rest.slice(0, cut).trimEnd()}`);
    rest = rest.slice(cut).trimStart();
    lead = "    ";
  }
  lines.push(`${indent}${lead}${rest}`);
  return lines;
}

function cutAt(text: string, room: number): number {
  const head = text.slice(0, room);
  const space = head.lastIndexOf(" ");
  const sign = Math.max(...[",", ";", "+", "*", "/", ")"].map((one) => head.lastIndexOf(one)));
  const cut = Math.max(space, sign) + 1;
  return cut > room / 2 ? cut : room;
}
