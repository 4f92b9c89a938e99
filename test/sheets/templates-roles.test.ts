import { expect, test } from "vitest";
import { modelOf } from "../../engine/template/models.js";
import { templates } from "../../sheets/templates/index.js";

test.each(templates)(
  "$name $version: the names of its roles are cells, columns or tables of it",
  (one) => {
    const model = modelOf(one, "us");
    const { told = [], office = [], agreed, sections = [], ...roles } = one.roles ?? {};
    const { name: _, draftMark: __, marks: ___, draws, ...cells } = agreed ?? {};
    const names = [
      ...Object.values(roles).filter((value) => typeof value === "string"),
      ...[...told, ...office, ...Object.values(cells), ...Object.values(draws ?? {})],
      ...sections.map((section) => section.name),
      ...Object.entries(one.example ?? {}).flatMap(([key, name]) =>
        key === "typed" ? [] : [name],
      ),
    ];
    const known = (name: string) => {
      const [table = "", key = ""] = name.split(".");
      return (
        model.byId.has(name) || model.tables.has(name) || model.tables.get(table)?.columns.has(key)
      );
    };
    expect(names.filter((name) => !known(name))).toEqual([]);
    expect(names.length).toBeGreaterThan(10);
  },
);
