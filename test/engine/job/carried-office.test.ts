import { describe, expect, test } from "vitest";
import { fillBook } from "../../../engine/book/fill.js";
import type { OfficeBook } from "../../../engine/book/office-book.js";
import { starterBook } from "../../../engine/book/starter.js";
import { carriedOffice } from "../../../engine/job/carried-office.js";
import type { InputValues, JobRecord } from "../../../engine/job/record.js";
import { recorded } from "../../../engine/job/trail/inputs.js";
import { valuesAsGiven } from "../../../engine/job/values.js";
import * as t from "../../../engine/template/index.js";
import { modelOf } from "../../../engine/template/models.js";

/** Boards of which the office keeps the kinds and their rule, and each job decides the length. */
const boards = t.template({
  name: "boards",
  version: 1,
  title: "Boards (invented, for tests)",
  headline: ["longest"],
  formulas: [],
  sheets: [
    t.sheet("Boards", "Boards.", [
      t.table(
        "boards",
        "Boards",
        {
          rows: 4,
          filled: "LEN(kind)>0",
          data: [
            { kind: "oak", share: 0.5, board_length: 8 },
            { kind: "ash", share: 0.25, board_length: 6 },
          ],
        },
        {
          kind: t.office(t.text, "Kind"),
          share: t.office(t.percent, "Share", { default: 0.1, least: 0, most: 1 }),
          board_length: t.decide(t.length, "Length", { default: 1, least: 0, most: 20 }),
        },
      ),
      t.lines("Longest", {
        longest: t.calc(
          t.length,
          'SUMPRODUCT((boards.kind<>"")*boards.share*boards.board_length)',
          "Longest",
        ),
      }),
    ]),
  ],
});

const model = modelOf(boards, "us");
const starter = starterBook(boards, "us");
const bookWith = (tables: OfficeBook["tables"]): OfficeBook => ({ ...starter, tables });
const jobOf = (inputs: InputValues) => ({ inputs }) as JobRecord;
const lengths = (values: readonly unknown[]) =>
  [1, 2, 3].map((row) => values[model.byId.get(`boards.board_length[${row}]`)?.index as number]);

const books: [string, OfficeBook, unknown[]][] = [
  ["without the table", bookWith({}), [8, 6, null]],
  ["as it comes with the template", starter, [8, 6, null]],
  [
    "in another order",
    bookWith({ boards: [{ kind: "Ash", share: 0.2 }, { kind: "oak" }] }),
    [6, 8, null],
  ],
  [
    "with a kind of its own",
    bookWith({ boards: [{ kind: "oak" }, { kind: "elm" }, { kind: "ash" }] }),
    [8, 1, 6],
  ],
];

describe.each(books)("under an office book %s", (_, book, wanted) => {
  test("what a job decides for a kind is the template's until it says otherwise", () => {
    expect(lengths(valuesAsGiven(model, jobOf({}), book))).toEqual(wanted);
  });

  test.each<[string, InputValues]>([
    ["nothing", {}],
    ["a cell", { boards: [{ kind: "oak", share: 0.5, board_length: 9 }] }],
    ["a row taken out", { boards: [null, { kind: "ash", board_length: 2 }] }],
  ])("a job that gives %s has the same values under the book that its bid carries", (_, inputs) => {
    const values = valuesAsGiven(model, jobOf(inputs), book);
    fillBook(model, values, book);
    const carried = carriedOffice(model, (id) => {
      const cell = model.byId.get(id);
      return cell === undefined ? null : recorded(cell, values[cell.index]);
    });
    const own = valuesAsGiven(model, jobOf(inputs), book);
    expect(valuesAsGiven(model, jobOf(inputs), carried)).toEqual(own);
  });
});
