/** What other rooms use of seals. */
export { fingerprintOf, newKeyPair, openKey, secretKey } from "./key.js";
export { withSeal } from "./put.js";
export {
  changedSections,
  propertiesOfSeal,
  type Seal,
  sealed,
  sealIn,
  sealProperties,
  signerOf,
} from "./seal.js";
export { type SealedContent, type SectionName, type Sections, sectionsOf } from "./sections.js";
