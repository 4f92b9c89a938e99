import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
} from "node:crypto";
import { RillbookError } from "../errors.js";

/** A pair of keys as they stand in their files (PEM: PKCS #8 and SubjectPublicKeyInfo). */
export interface KeyPair {
  /** Signs; stays in the office. */
  readonly secret: string;
  /** Shows who signed; for everybody. */
  readonly open: string;
  readonly fingerprint: string;
}

/** Makes a new pair of keys for Ed25519 (RFC 8032), by the system's own randomness. */
export function newKeyPair(): KeyPair {
  const { privateKey, publicKey } = generateKeyPairSync("ed25519");
  return {
    secret: privateKey.export({ type: "pkcs8", format: "pem" }).toString(),
    open: publicKey.export({ type: "spki", format: "pem" }).toString(),
    fingerprint: fingerprintOf(publicKey),
  };
}

/** The key that signs, from the text of its file. Throws RillbookError. */
export function secretKey(pem: string, file: string): KeyObject {
  if (/ENCRYPTED/.test(pem)) {
    throw unusable(file, "is locked by a passphrase, which rillbook does not ask for");
  }
  if (/BEGIN PUBLIC KEY/.test(pem)) {
    throw unusable(file, "is an open key, which shows a seal; sealing takes the secret one");
  }
  return ed25519(() => createPrivateKey(pem), file);
}

/** The key that shows who signed, from the text of a file with either key of the pair. Throws RillbookError. */
export const openKey = (pem: string, file: string): KeyObject =>
  ed25519(() => createPublicKey(pem), file);

function ed25519(made: () => KeyObject, file: string): KeyObject {
  let key: KeyObject;
  try {
    key = made();
  } catch {
    throw unusable(file, "is no key in PEM form");
  }
  if (key.asymmetricKeyType !== "ed25519") {
    throw unusable(file, `is a key of the kind ${key.asymmetricKeyType ?? key.type}, not Ed25519`);
  }
  return key;
}

const unusable = (file: string, what: string): RillbookError =>
  new RillbookError(
    "key-unusable",
    `The key ${file} ${what}. Make a pair with rillbook seal --new-key office.pem, or name another file.`,
  );

/** SHA-256 of the open key (DER, SubjectPublicKeyInfo), as 64 hexadecimal digits. */
export const fingerprintOf = (key: KeyObject): string =>
  createHash("sha256")
    .update(publicPart(key).export({ type: "spki", format: "der" }))
    .digest("hex");

/** The open key in 43 letters and digits, as a seal carries it. */
export const lettersOf = (key: KeyObject): string =>
  publicPart(key).export({ format: "jwk" }).x as string;

/** The open key from its letters; undefined for what is none. */
export function keyOfLetters(x: string): KeyObject | undefined {
  try {
    return createPublicKey({ key: { kty: "OKP", crv: "Ed25519", x }, format: "jwk" });
  } catch {
    return undefined;
  }
}

const publicPart = (key: KeyObject): KeyObject =>
  key.type === "private" ? createPublicKey(key) : key;
