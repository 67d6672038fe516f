// node units_reference.cjs CASES.json: the same conversions by the reference library; results agree to
// 1 part in 10^9, or the case is a fault.
'use strict';
const fs = require('fs');
const ucum = require('@lhncbc/ucum-lhc').UcumLhcUtils.getInstance();

const kTolerance = 1e-9;
const kShown = 12;
// Grams of one mole, as laboratories convert (src/base/unit.cpp names the factors).
const kMolecularWeight = { glucose: 180.16, cholesterol: 386.7, triglycerides: 885.7 };

function ratio(numerator, denominator) {
  // Scaled, so that small results keep their digits.
  const scale = 10n ** 60n;
  return Number(BigInt(numerator) * scale / BigInt(denominator)) / 1e60;
}

const known = new Map();
function unitOf(text) {
  if (!known.has(text)) known.set(text, ucum.getSpecifiedUnit(text, 'validate').unit);
  return known.get(text);
}

// By the size of both units, where the library refuses to convert: it takes no conversion to an
// arbitrary unit, be it of itself (UCUM 2.1, section 24).
function byMagnitude(one) {
  const from = unitOf(one.from), to = unitOf(one.to);
  if (!from || !to || String(from.dim_) !== String(to.dim_)) return undefined;
  return Number(one.value) * from.magnitude_ / to.magnitude_;
}

function reference(one) {
  if (one.from.includes('[iU]') || one.from.includes('[IU]') || one.to.includes('[iU]') || one.to.includes('[IU]'))
    return { value: byMagnitude(one), error: 'not known, or of another dimension' };
  // A mole of charge is one equivalent: by the table of UCUM, eq = 1 mol.
  const extra = one.analyte ? { molecularWeight: kMolecularWeight[one.analyte] } : { charge: 1 };
  const isCharged = /eq/.test(one.from) || /eq/.test(one.to);
  if (isCharged && byMagnitude(one) !== undefined) return { value: byMagnitude(one) };
  const result = ucum.convertUnitTo(one.from, Number(one.value), one.to, one.analyte ? extra : undefined);
  return { value: result.status === 'succeeded' ? result.toVal : undefined, error: (result.msg || []).join('; ') };
}

const cases = JSON.parse(fs.readFileSync(process.argv[2], 'utf8'));
const byEquation = cases.filter((one) => one.analyte === 'hba1c');
const faults = [];
let agreeing = 0;
for (const one of cases) {
  if (one.analyte === 'hba1c') continue;
  const ours = ratio(one.numerator, one.denominator);
  const theirs = reference(one);
  const isSame = theirs.value !== undefined && Math.abs(ours - theirs.value) <= kTolerance * Math.max(Math.abs(ours), Math.abs(theirs.value));
  if (isSame) agreeing++;
  else faults.push(`${one.value} ${one.from} is ${ours} ${one.to}; the reference says ${theirs.value ?? theirs.error}`);
}
console.log(`${agreeing} of ${cases.length - byEquation.length} conversions agree to 1 part in 10^9`);
console.log(`${byEquation.length} of HbA1c are left out: the master equation is no conversion of UCUM (tests/base has its published values)`);
for (const fault of faults.slice(0, process.env.SHOW_ALL ? faults.length : kShown)) console.log('  ' + fault);
if (faults.length > 0) console.log(`${faults.length} differ`);
process.exit(faults.length === 0 && agreeing > 0 ? 0 : 1);
