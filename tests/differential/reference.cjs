// node reference.cjs CASES.json: the reference engine's answers to generated cases, compared with
// Stile's. Numbers agree to 8 significant digits; every other difference must belong to a class of
// difference_classes.cjs, which names the section of the specification that allows or asks for it.
'use strict';
const fs = require('fs');
const fhirpath = require('fhirpath');
const r4 = require('fhirpath/fhir-context/r4');
const { classes, plain } = require('./difference_classes.cjs');

const kDigits = 1e-8;
const kShown = 12;

function sameNumber(a, b) {
  return a === b || Math.abs(a - b) <= kDigits * Math.max(Math.abs(a), Math.abs(b));
}

function same(a, b) {
  if (typeof a === 'number' && typeof b === 'number') return sameNumber(a, b);
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a), others = Object.keys(b);
  return keys.length === others.length && keys.every((key) => key in b && same(a[key], b[key]));
}

function referenceAnswer(resource, expression) {
  try {
    return { answer: fhirpath.evaluate(structuredClone(resource), expression, { resource: structuredClone(resource) }, r4,
                                       { preciseMath: true }) };
  } catch (error) {
    return { error: String(error && error.message || error) };
  }
}

// Whether the reference engine gives Stile's answer (or refuses as Stile does) to other words.
function agreesOn(expression, difference, reads = (value) => value) {
  const again = referenceAnswer(difference.resource, expression);
  if (difference.stile.error !== undefined) return again.error !== undefined;
  const read = (value) => plain(reads(value));
  if (again.answer !== undefined && same(difference.stile.answer.map(read), again.answer.map(read))) return true;
  // What is left after the rewriting may be a class that shows in the answers.
  return classes.some((one) => one.applies && one.applies({ ...difference, reference: again }, same));
}

// The class of a difference. One that takes the rewriting of several classes belongs to all of them,
// and is counted under the first.
function classOf(difference) {
  const rewriting = classes.filter((one) => one.rewrite && one.rewrite(difference.expression) !== difference.expression);
  for (const one of classes) {
    if (one.applies && one.applies(difference, same)) return one;
    if (rewriting.includes(one) && agreesOn(one.rewrite(difference.expression), difference, one.reads)) return one;
  }
  const all = rewriting.reduce((expression, one) => one.rewrite(expression), difference.expression);
  return rewriting.length > 1 && agreesOn(all, difference) ? rewriting[0] : undefined;
}

const data = JSON.parse(fs.readFileSync(process.argv[2], 'utf8'));
console.warn = () => {};
const log = console.log;
console.log = () => {};
const found = new Map();
let agreeing = 0, bothRefused = 0;
const faults = [];
for (const one of data.cases) {
  const reference = referenceAnswer(data.resources[one.resource], one.expression);
  if (one.error !== undefined && reference.error !== undefined) { bothRefused++; agreeing++; continue; }
  if (one.answer && reference.answer && same(one.answer, reference.answer)) { agreeing++; continue; }
  const difference = { expression: one.expression, resource: data.resources[one.resource],
                       stile: one.error !== undefined ? { error: one.error } : { answer: one.answer }, reference };
  const kind = classOf(difference);
  if (!kind) { faults.push(difference); continue; }
  found.set(kind.id, (found.get(kind.id) || 0) + 1);
}
log(`${agreeing} of ${data.cases.length} agree (${bothRefused} refused by both)`);
for (const kind of classes) {
  if (found.has(kind.id)) log(`${String(found.get(kind.id)).padStart(6)}  ${kind.id} (${kind.section}): ${kind.why}`);
}
log(`${String(faults.length).padStart(6)}  differences without a class`);
for (const fault of faults.slice(0, process.env.SHOW_ALL ? faults.length : kShown)) {
  log(`  ${fault.expression}\n    stile ${JSON.stringify(fault.stile)}\n    reference ${JSON.stringify(fault.reference)}`);
}
process.exit(faults.length === 0 ? 0 : 1);
