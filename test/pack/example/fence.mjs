import {
  book,
  calc,
  check,
  formula,
  input,
  lines,
  paragraphs,
  prose,
  published,
  quantities,
  sheet,
  table,
  template,
} from "rillbook";

const { area, count, date, length, money, number, percent, text } = quantities;
const invented = "invented for this example";

/** A wooden fence, from its runs to its price. Every figure and price in it is invented. */
export default template({
  name: "fence",
  version: 1,
  title: "Wooden fence",
  headline: ["price", "total_posts", "fence_length"],
  formulas: [
    formula(
      "POSTS_FOR",
      "Posts for a run, one more than its fields",
      { run: length, apart: length },
      count,
      "WHOLE_UP(run/apart)+1",
      "geometry",
    ),
  ],
  office: [
    {
      name: "items",
      sheet: "Items",
      means: "What is bought.",
      columns: [
        { key: "code", kind: "code", means: "Code", required: true },
        { key: "unit_price", kind: "number", means: "Price in $", required: true, least: 0 },
        { key: "good_until", kind: "date", means: "Last day of the quote" },
      ],
      starter: [
        { code: "post", unit_price: 1 },
        { code: "board", unit_price: 1 },
      ],
    },
  ],
  sheets: [
    sheet("Fence", "Where the fence stands, and what it is made of.", [
      lines("Fence", {
        customer: input(text, "Customer"),
        bid_date: input(date, "Bid date"),
        fence_height: input(length, "Height", { default: 6, least: 2, most: 8 }),
        soil: input(text, "Soil", { choices: "soils.soil", default: "loam" }),
        post_spacing: calc(length, "PICK(soils.spacing,soils.soil,soil)", "Space between posts"),
      }),
      table(
        "runs",
        "Runs",
        { rows: 8, opening: 1, filled: "run_length>0" },
        {
          side: input(text, "Side", { optional: true }),
          run_length: input(length, "Length", { least: 0, most: 1000 }),
          posts: calc(count, "POSTS_FOR(run_length,post_spacing)", "Posts"),
          face: calc(area, "run_length*fence_height", "Face"),
          crew: calc(text, "~{side}: {posts|0} posts.", "For the crew"),
        },
      ),
      table(
        "soils",
        "Soils",
        {
          rows: 3,
          data: [
            { soil: "sand", spacing: 6 },
            { soil: "loam", spacing: 8 },
            { soil: "clay", spacing: 9 },
          ],
        },
        {
          soil: published(text, "Soil", { source: invented }),
          spacing: published(length, "Space between posts", { source: invented }),
        },
      ),
      lines("Totals", {
        fence_length: calc(length, "SUM(runs.run_length)", "Fence length"),
        total_posts: calc(count, "SUM(runs.posts)", "Posts"),
        total_face: calc(area, "SUM(runs.face)", "Face"),
      }),
    ]),
    sheet("Price", "What the fence costs.", [
      table(
        "items",
        "Prices",
        { rows: 4, from: "items", usedBy: ["takeoff.code"] },
        {
          code: book(text, "Code"),
          unit_price: book(money, "Price"),
          good_until: book(date, "Good until"),
        },
      ),
      table(
        "takeoff",
        "Materials",
        { rows: 2, data: [{ code: "post" }, { code: "board" }] },
        {
          code: input(text, "Code"),
          wanted: calc(
            number,
            (row) => (row === 1 ? "total_posts" : "WHOLE_UP(total_face/2[ft²])"),
            "Quantity",
          ),
          each: calc(money, "PICK(items.unit_price,items.code,code)", "Each"),
          cost: calc(money, "wanted*each", "Cost", { strong: true }),
          quote_holds: check(
            "PICK(items.good_until,items.code,code)>=bid_date",
            "The price of {code} ended before {bid_date}: ask for a new quote",
            { label: "Quote expired" },
          ),
        },
      ),
      lines("Price", {
        labor_per_post: input(money, "Labor, each post", { default: 65, least: 0 }),
        margin: input(percent, "Profit margin", { default: 0.2, least: 0, most: 0.9 }),
        material_cost: calc(money, "SUM(takeoff.cost)", "Materials"),
        labor_cost: calc(money, "total_posts*labor_per_post", "Labor"),
        total_cost: calc(money, "material_cost+labor_cost", "Total cost", { strong: true }),
        price: calc(money, "total_cost/(1-margin)", "Price", { strong: true }),
        profit: calc(money, "price-total_cost", "Profit"),
      }),
      prose("For the customer", {
        offer: calc(text, "~A fence of {fence_length|0} for {customer}.", "Offer"),
      }),
      paragraphs("Caution", "Have buried lines marked before you dig: local code says by whom."),
    ]),
  ],
  roles: {
    price: "price",
    cost: "total_cost",
    sections: [
      { label: "Material", name: "material_cost" },
      { label: "Labor", name: "labor_cost" },
      { label: "Profit", name: "profit" },
    ],
    goodUntil: "items.good_until",
  },
});
