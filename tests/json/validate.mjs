// SPDX-License-Identifier: GPL-3.0-or-later
// Holds a file against the JSON Schema of the exchange format with a general validator (ajv).
//   node validate.mjs SCHEMA FILE      INSETBOOK_NODE_MODULES names the folder that holds ajv
// Exit status 0: valid; 1: not, with what is wrong; 2: it could not be tried.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const modules = process.env.INSETBOOK_NODE_MODULES;
const [schemaFile, file] = process.argv.slice(2);
if (!modules || !file) {
  console.error("usage: INSETBOOK_NODE_MODULES=DIR node validate.mjs SCHEMA FILE");
  process.exit(2);
}
let Ajv;
try {
  const require = createRequire(join(modules, "x.js"));
  Ajv = require("ajv/dist/2020").default;
} catch (error) {
  console.error(String(error));
  process.exit(2);
}
const ajv = new Ajv({ strict: true, allErrors: false });
const validate = ajv.compile(JSON.parse(readFileSync(schemaFile, "utf8")));
if (validate(JSON.parse(readFileSync(file, "utf8")))) process.exit(0);
for (const error of validate.errors) console.log(`${error.instancePath} ${error.message}`);
process.exit(1);
