import { calc, count, length, lines, office, walk } from "../../../engine/template/index.js";

export const access = lines("Ground mats for access", {
  access_length: walk(length, "Lawn and roots to cover", {
    default: 60,
    least: 0,
    most: 2000,
  }),
  mat_length: office(length, "Length of a ground mat", { default: 8, least: 1, most: 30 }),
  mat_rows: office(count, "Mats side by side", { default: 2, least: 0, most: 6, whole: true }),
  ground_mats: calc(count, "mat_rows*WHOLE_UP(access_length/MAX(0.1[ft],mat_length))", "Ground mats", { strong: true }),
});
