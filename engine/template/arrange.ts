import type {
  AskingSheet,
  Block,
  CellDeclaration,
  InputDeclaration,
  LinesBlock,
  SheetDeclaration,
  TableBlock,
} from "./declare.js";
import { shownAgain } from "./implied.js";
import { againName } from "./implied-names.js";

/** The sheets with each input on the one that asks for it, and what of that does not hold together. */
export interface Arranged {
  readonly sheets: readonly SheetDeclaration[];
  readonly faults: readonly string[];
}

/**
 * Moves the inputs of a template to the sheets that ask for them. Single cells gather in a list at the
 * head of their section; of a table, the columns that a sheet asks for stand there row by row, and its other
 * columns stay. Sheets of which nothing stays are left out. Names, ids and formulas are those declared.
 */
export function arrange(
  sheets: readonly SheetDeclaration[],
  asks: readonly AskingSheet[] = [],
): Arranged {
  if (asks.length === 0) return { sheets, faults: [] };
  const moving = new Moving(asks);
  const left = sheets.flatMap((sheet) => moving.leave(sheet));
  const of = (where: AskingSheet["stands"]) =>
    asks.filter(({ stands = "first" }) => stands === where).map((ask) => moving.asking(ask));
  const arranged = [...of("first"), ...left, ...of("last")];
  return { sheets: arranged, faults: [...askFaults(asks), ...moving.faults()] };
}

/** What has come to a section of an asking sheet so far. */
interface Section {
  readonly blocks: Block[];
  /** Its list of single cells, which is among the blocks. */
  cells?: Record<string, CellDeclaration>;
}

class Moving {
  private readonly found: string[] = [];
  /** By asking sheet and section. */
  private readonly sections = new Map<string, Map<string, Section>>();

  constructor(private readonly asks: readonly AskingSheet[]) {
    for (const { name, sections } of asks) {
      this.sections.set(name, new Map(sections.map((one) => [one, { blocks: [] }])));
    }
  }

  /** A declared sheet without what is asked for elsewhere; nothing, where nothing of it stays. */
  leave(sheet: SheetDeclaration): SheetDeclaration[] {
    const blocks = sheet.blocks.flatMap((block) => {
      if (block.kind === "lines") return this.leaveLines(block);
      return block.kind === "table" ? this.leaveTable(block) : [block];
    });
    return blocks.length === 0 && sheet.blocks.length > 0 ? [] : [{ ...sheet, blocks }];
  }

  asking({ asked, sections, stands, ...sheet }: AskingSheet): SheetDeclaration {
    const own = this.sections.get(sheet.name);
    const blocks = sections.flatMap((heading) => {
      const [first, ...others] = own?.get(heading)?.blocks ?? [];
      return first === undefined ? [] : [{ ...first, heading }, ...others];
    });
    return { ...sheet, blocks };
  }

  faults(): string[] {
    const empty = this.asks.flatMap(({ name, sections }) =>
      sections.flatMap((heading) =>
        this.sections.get(name)?.get(heading)?.blocks.length === 0
          ? [
              `Sheet "${name}": nothing stands in its section "${heading}". Take it out, or name it in an input.`,
            ]
          : [],
      ),
    );
    return [...new Set([...this.found, ...empty])];
  }

  private leaveLines(block: LinesBlock): Block[] {
    const staying: Record<string, CellDeclaration> = {};
    for (const [name, cell] of Object.entries(block.cells)) {
      const ask = this.askFor(name, cell);
      if (ask === undefined || cell.kind !== "input") {
        staying[name] = cell;
        continue;
      }
      const section = this.section(ask, cell.section ?? block.section ?? block.heading, name);
      if (section.cells === undefined) {
        section.cells = {};
        section.blocks.unshift({ kind: "lines", heading: block.heading, cells: section.cells });
      }
      section.cells[name] = cell;
      if (cell.again) {
        staying[againName(name)] = {
          ...shownAgain(name, cell),
          note: `Given on sheet ${ask.name}.`,
        };
      }
    }
    return Object.keys(staying).length === 0 && Object.keys(block.cells).length > 0
      ? []
      : [{ ...block, cells: staying }];
  }

  private leaveTable(block: TableBlock): Block[] {
    const moved = Object.entries(block.columns).flatMap(([key, cell]) => {
      const ask = this.askFor(`${block.name}.${key}`, cell);
      return ask === undefined ? [] : [{ key, ask, cell: cell as InputDeclaration }];
    });
    const [first] = moved;
    if (first === undefined) return [block];
    // a table of which nothing stays has its home where its first column goes
    const stays = moved.length < Object.keys(block.columns).length;
    const away = stays ? moved : moved.filter(({ ask }) => ask !== first.ask);
    const spread: TableBlock = {
      ...block,
      elsewhere: Object.fromEntries(away.map(({ key, ask }) => [key, ask.name])),
    };
    for (const ask of new Set(moved.map((one) => one.ask))) {
      const here = moved.filter((one) => one.ask === ask);
      const section = this.section(ask, this.sectionOf(block, ask, here), block.name);
      const isHome = !stays && ask === first.ask;
      section.blocks.push(isHome ? spread : { kind: "part", heading: block.heading, of: spread });
    }
    return stays ? [spread] : [];
  }

  private askFor(name: string, cell: CellDeclaration): AskingSheet | undefined {
    if (cell.kind !== "input" || cell.asked === undefined) return undefined;
    const found = this.asks.find(({ asked }) => asked === cell.asked);
    if (found === undefined) {
      this.found.push(
        `The input "${name}" is asked for as "${cell.asked}", but no sheet of \`asks\` asks for that. Add one.`,
      );
    }
    return found;
  }

  private sectionOf(
    block: TableBlock,
    ask: AskingSheet,
    columns: readonly { readonly cell: InputDeclaration }[],
  ): string {
    const usual = block.section ?? block.heading;
    const [section = usual, other] = new Set(columns.map(({ cell }) => cell.section ?? usual));
    if (other !== undefined) {
      this.found.push(
        `Table "${block.name}": its columns on sheet "${ask.name}" name two sections, "${section}" and "${other}". Rows stand in one: name the same.`,
      );
    }
    return section;
  }

  private section(ask: AskingSheet, heading: string, name: string): Section {
    const found = this.sections.get(ask.name)?.get(heading);
    if (found !== undefined) return found;
    this.found.push(
      `"${name}" stands in section "${heading}" of sheet "${ask.name}", which its \`sections\` do not name. Add it there, or give the input one of them as its \`section\`.`,
    );
    return { blocks: [] };
  }
}

/** What is wrong with the list of asking sheets itself. */
function askFaults(asks: readonly AskingSheet[]): string[] {
  return asks.flatMap(({ name, asked, sections }, i) => {
    const same = asks.findIndex((one) => one.asked === asked);
    const twice = sections.filter((one, at) => sections.indexOf(one) < at);
    return [
      ...(same < i
        ? [
            `Sheet "${name}": sheet "${asks[same]?.name}" asks for "${asked}", too. Keep one of them.`,
          ]
        : []),
      ...twice.map((one) => `Sheet "${name}": its section "${one}" is named twice. Take one out.`),
    ];
  });
}
