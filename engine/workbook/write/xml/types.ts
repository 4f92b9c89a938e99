import { attribute } from "./text.js";

/** Types of parts that begin alike (ISO/IEC 29500-1, 15). */
export const drawingType = "application/vnd.openxmlformats-officedocument.";

/** The part of the custom properties, by its name in the list of types. */
export const customPart = "/docProps/custom.xml";

/** What a part is, in the list of types (ISO/IEC 29500-2, 10.1.2.2). */
export const override = (part: string, type: string): string =>
  `<Override PartName="${attribute(part)}" ContentType="${type}"/>`;
