'use strict';
// The classes of difference between Stile and the reference engine, each with the section of FHIRPath
// 2.0.0 (or of FHIR R4) by which Stile's answer stands. A class never goes by the look of an
// expression alone:
//
// - `rewrite` gives an expression of the same meaning by the specification, in other words that the
//   reference engine does not stumble over: the difference belongs to the class if it then gives
//   Stile's answer (both brought into the notation of `reads`, where there is one);
// - `applies` looks at both answers.

// Paths of the generated resources by type.
const kIntegerPath = /(\.maxLength\b|\.rank\b|\bmultipleBirth\.ofType\(integer\)|\bvalue\.ofType\(integer\))/g;
const kDecimalPath = /(ofType\(Quantity\)\.value\b|\bvalue\.ofType\(decimal\)|descendants\(\)\.ofType\(decimal\))/g;
const kDateTimePath = /(\bauthored\b|\beffective\b|\bissued\b|\bperiod\.start\b|\bperiod\.end\b|\bvalue\.ofType\(dateTime\))/g;

const kDateTime = /^(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?)(Z|[+-]\d\d:\d\d)$/;
const kQuantity = /^(-?\d+(?:\.\d+)?) ('[^']+'|[a-z]+)$/;
const kNumber = /^-?\d+\.\d+$/;

// A value in one notation: numbers and quantities by value, moments by instant, partial dates without T.
function plain(value) {
  if (typeof value !== 'string') return value;
  const moment = kDateTime.exec(value);
  if (moment) return { moment: Date.parse(value.replace('-00:00', 'Z')) };
  const quantity = kQuantity.exec(value);
  if (quantity) return { value: Number(quantity[1]), unit: quantity[2].replace(/^([a-z]+?)s?$/, '$1') };
  if (kNumber.test(value)) return Number.isInteger(Number(value)) ? String(Number(value)) : { number: Number(value) };
  return value.replace(/^(\d{4}(?:-\d\d){0,2})T$/, '$1').replace(/\d+\.\d+/g, (digits) => String(Number(Number(digits).toPrecision(8))));
}

// Puts the first argument of every call of one of the functions between `before` and `after`.
function wrapArgument(functions, expression, before, after) {
  let result = '', at = 0;
  const call = new RegExp(`\\b(?:${functions})\\(`, 'g');
  for (let found = call.exec(expression); found; found = call.exec(expression)) {
    const start = found.index + found[0].length;
    if (start <= at) continue;
    let depth = 0, end = start, inText = false;
    for (; end < expression.length; ++end) {
      const c = expression[end];
      if (inText && c === '\\') { ++end; continue; }
      if (c === "'") inText = !inText;
      if (inText) continue;
      if (c === '(') depth++;
      if (depth === 0 && (c === ')' || c === ',')) break;
      if (c === ')') depth--;
    }
    if (end === start) continue;
    const inner = wrapArgument(functions, expression.slice(start, end), before, after);
    result += expression.slice(at, start) + before + inner + after;
    at = end;
    call.lastIndex = end;
  }
  return result + expression.slice(at);
}

const wrapCriteria = (expression, before, after) => wrapArgument('where|exists|all|iif', expression, before, after);

// What toChars() makes of a text.
const areCharacters = (answer) => answer.length > 1 && answer.every((one) => typeof one === 'string' && [...one].length === 1);

const both = (d) => d.stile.answer !== undefined && d.reference.answer !== undefined;
const onlyStileRefuses = (d) => d.stile.error !== undefined && d.reference.answer !== undefined;
const onlyReferenceRefuses = (d) => d.stile.answer !== undefined && d.reference.error !== undefined;

const classes = [
  {
    id: 'notation', section: '5.5 toString(), 4.1.7 DateTime, 4.1.8 Quantity',
    why: 'the same value written otherwise: digits beyond the 8th, plural of a calendar word, Z for -00:00, no T behind a partial date',
    applies: (d, same) => both(d) && (same(d.stile.answer.map(plain), d.reference.answer.map(plain)) ||
        (areCharacters(d.stile.answer) && areCharacters(d.reference.answer) && same(plain(d.stile.answer.join('')), plain(d.reference.answer.join(''))))),
  },
  {
    id: 'comparing-booleans', section: '6.2 Comparison',
    why: 'order is defined for String, Integer, Decimal, Quantity, Date, DateTime and Time; Booleans are an error, the reference engine orders them',
    applies: (d) => onlyStileRefuses(d) && /^(<|>|<=|>=) does not go with (System|FHIR)\.[Bb]oolean and (System|FHIR)\.[Bb]oolean$/.test(d.stile.error),
  },
  {
    id: 'sorting-booleans', section: '6.2 Comparison',
    why: 'sort(), min() and max() go by the comparison operators, which Booleans do not have',
    applies: (d) => onlyStileRefuses(d) && d.stile.error === 'items of these types have no order',
  },
  {
    id: 'operand-of-another-type', section: '6.6 Math, 6.7 Date/Time Arithmetic (operands of other types are an error)',
    why: 'the reference engine reads numbers out of texts, adds a date to a quantity, or gives empty beside a quantity',
    applies: (d) => onlyStileRefuses(d) && (/^([-+*/]|div|mod) does not go with .*(String|Boolean|FHIR\.(string|code|id|boolean))/.test(d.stile.error) ||
            /^([*/]|div|mod) does not go with .*(Date|DateTime|Time|FHIR\.(date|dateTime|instant|time))$/.test(d.stile.error) ||
            /^\+ does not go with (System\.Quantity|FHIR\.Quantity) and .*(Date|DateTime|Time|date|dateTime|time)$/.test(d.stile.error) ||
            /^(div|mod) does not go with .*Quantity/.test(d.stile.error)),
  },
  {
    id: 'rounding-a-quantity', section: '5.7 round(), floor(), ceiling(), truncate()',
    why: 'they are defined for Integer and Decimal',
    applies: (d) => onlyStileRefuses(d) && /^(round|floor|ceiling|truncate)\(\) is asked of a number only$/.test(d.stile.error),
  },
  {
    id: 'not-a-number', section: '5.7 ln(), log()',
    why: 'a result that is no number is empty; the reference engine gives NaN or an infinity',
    applies: (d) => both(d) && d.stile.answer.length === 0 && d.reference.answer.length === 1 && typeof d.reference.answer[0] === 'number' &&
        !Number.isFinite(d.reference.answer[0]),
  },
  {
    id: 'booleans-only', section: '5.1 allTrue(), anyTrue(), allFalse(), anyFalse() (a collection of Boolean values)',
    why: 'items of other types are an error; the reference engine leaves off at the first item that decides',
    applies: (d) => onlyStileRefuses(d) && /^(all|any)(True|False)\(\) is asked of Booleans only$/.test(d.stile.error),
  },
  {
    id: 'sum-of-texts', section: '3.0.0 (trial use) sum(), avg()',
    why: 'sum() and avg() are defined for numbers and quantities; the reference engine joins texts, the last one first',
    applies: (d) => onlyStileRefuses(d) && /^(sum|avg)\(\) is asked of numbers and quantities only$/.test(d.stile.error),
  },
  {
    id: 'text-function-on-a-date', section: '5.6 String Manipulation, FHIR R4, FHIRPath, Using FHIR types (FHIR.date is System.Date)',
    why: 'a date is no text; the reference engine takes an element that is a date as its text',
    applies: (d) => onlyStileRefuses(d) && /(is asked of a text only|takes a text here|joins texts only)$/.test(d.stile.error) &&
        /birthDate|authored|effective|issued|period|ofType\(date/.test(d.expression),
  },
  {
    id: 'letters-beyond-latin-1', section: '3.0.0 (trial use) encode(), decode()',
    why: 'a text is encoded as UTF-8, in small hexadecimal digits; the reference engine takes code units up to 255 as bytes',
    applies: (d) => both(d) && (d.expression + JSON.stringify(d.resource)).includes('\u00e9') && d.expression.includes('.encode('),
  },
  {
    id: 'whole-decimal', section: '5.5 toDecimal(), 5.7 exp() (the result is a Decimal)',
    why: 'the reference engine forgets that a whole number is a Decimal',
    applies: (d, same) => both(d) && same(d.reference.answer, d.stile.answer.map((value) =>
        typeof value === 'string' ? value.replace('Decimal', 'Integer').replace('DECIMAL', 'INTEGER').replace('decimal', 'integer') : value)),
  },
  {
    id: 'whole-decimal-is-no-integer', section: '5.5 toDecimal(), convertsToInteger(), 5.7 Math, 6.6 Math (the result is a Decimal)',
    why: 'the reference engine forgets that a whole number is a Decimal',
    applies: (d) => both(d) && d.stile.answer[0] === false && d.reference.answer[0] === true && / is Integer\)|\.convertsToInteger\(\)/.test(d.expression) &&
        /round|toDecimal|exp\(\)|sum\(\)|avg\(\)|power|sqrt| [*\/+-] /.test(d.expression),
  },
  {
    id: 'whole-decimal-among-integers', section: '5.5 toDecimal(), 6.6 Math (the result is a Decimal), 6.3 Types',
    why: 'the reference engine forgets that a whole number is a Decimal, and keeps it where Integers are asked for',
    applies: (d) => both(d) && d.stile.answer.length < d.reference.answer.length && d.reference.answer.every(Number.isInteger) &&
        /ofType\(Integer\)|as System\.Integer/.test(d.expression) && /\(-\d+\.0\)|toDecimal\(\)|round\(|sum\(\)/.test(d.expression),
  },
  {
    id: 'unit-of-a-product', section: '6.6 Math (multiplication and division of quantities)',
    why: 'the unit of a product is written as it came about; the reference engine writes base units with exponents',
    applies: (d, same) => both(d) && / [*/] /.test(d.expression) && d.stile.answer.length === 1 && d.reference.answer.length === 1 &&
        typeof d.stile.answer[0] === 'string' && typeof d.reference.answer[0] === 'string' &&
        same(Number.parseFloat(d.stile.answer[0]), Number.parseFloat(d.reference.answer[0])) &&
        /'.*[./].*'$/.test(d.stile.answer[0]) && /'.*[0-9]'$/.test(d.reference.answer[0]),
  },
  {
    id: 'comparable-with-nothing', section: '4.4 Null and empty',
    why: 'comparable() of an empty collection is empty; the reference engine refuses',
    applies: (d) => onlyReferenceRefuses(d) && /Was expecting only one element but got \[\]/.test(d.reference.error) &&
        d.expression.includes('.comparable('),
  },
  {
    id: 'sorting-what-is-not-comparable', section: '6.2 Comparison (undecided order)',
    why: 'both refuse to sort by an undecided order, each where it meets one: calendar months go with weeks, weeks with hours, months not with hours',
    applies: (d) => onlyReferenceRefuses(d) && d.reference.error === 'Cannot sort incomparable values' && /month|year/.test(d.expression) &&
        /\.sort\(\)/.test(d.expression),
  },
  {
    id: 'sign-before-nothing', section: '6.6 Math (empty in, empty out)',
    why: 'the reference engine refuses a minus before the empty collection',
    applies: (d) => onlyReferenceRefuses(d) && /^Unary - can only be applied to an individual number or Quantity/.test(d.reference.error),
  },
  {
    id: 'nothing-beside-a-wrong-type', section: '6.6 div, mod (empty in, empty out)',
    why: 'one operand is empty, so the result is; the reference engine looks at the type of the other one first',
    applies: (d) => onlyReferenceRefuses(d) && /^Expected number, but got/.test(d.reference.error) && / (div|mod) /.test(d.expression),
  },
  {
    id: 'criterion-of-several-items', section: '4.5 Singleton evaluation of collections',
    why: 'a criterion of several items is an error; the reference engine takes it for true',
    rewrite: (e) => wrapCriteria(e, '(', ').single()'),
  },
  {
    id: 'criterion-that-is-no-system-boolean', section: '4.5 Singleton evaluation, FHIR R4, FHIRPath, Using FHIR types (FHIR.boolean is System.Boolean)',
    why: 'an element that is false counts as false, and one item of another type as true; the reference engine has it otherwise',
    rewrite: (e) => wrapCriteria(e, '(', ').select((($this is Boolean) or ($this is FHIR.boolean)).not() or ($this = true))'),
  },
  {
    id: 'set-with-repetitions', section: '5.1 subsetOf(), supersetOf()',
    why: 'each item is tested for membership, however often it stands there; the reference engine counts',
    rewrite: (e) => wrapArgument('supersetOf', e.replace(/\.subsetOf\(/g, '.distinct().subsetOf('), '(', ').distinct()'),
  },
  {
    id: 'digits-behind-a-sign', section: '6.6 Math (the result of a minus before a Decimal is a Decimal), 4.1.4 Decimal',
    why: 'the reference engine forgets that -74.0 is a Decimal of one decimal',
    rewrite: (e) => e.replace(/\(-(\d+\.\d+)\)/g, "('-$1'.toDecimal())"),
  },
  {
    id: 'integer-range', section: '4.1.3 Integer, 5.5 toInteger(), 6.6 Math (overflow is empty)',
    why: 'an Integer has 32 bits; what does not fit is empty',
    applies: (d) => both(d) && d.stile.answer.length === 0 && d.reference.answer.length === 1 && Math.abs(d.reference.answer[0]) > 2147483647,
  },
  {
    id: 'no-number-goes-on', section: '5.7 ln(), log()',
    why: 'a result that is no number is empty; the reference engine goes on with NaN',
    rewrite: (e) => e.replace(/\.(ln\(\)|log\(10\))/g, '.where($this > 0).$1'),
  },
  {
    id: 'sign-before-an-element', section: 'FHIR R4, FHIRPath, Using FHIR types (FHIR.integer is System.Integer), 6.6 Math',
    why: 'the reference engine refuses a minus before an element of a resource',
    rewrite: (e) => e.replace(kIntegerPath, '$1.select($this + 0)').replace(kDecimalPath, '$1.select($this + 0.0)'),
  },
  {
    id: 'fhir-string-is-not-system-string', section: '6.3 Types, FHIR R4, FHIRPath, Using FHIR types',
    why: 'ofType(String) keeps System.String only, as is(String) does; the reference engine keeps FHIR.string as well',
    rewrite: (e) => e.replace(/ofType\((String|Integer)\)/g, 'where($this is System.$1)'),
  },
  {
    id: 'date-of-an-element', section: '5.5 toDate()',
    why: 'toDate() of a DateTime is its date; the reference engine gives empty for an element with a time',
    rewrite: (e) => e.replace(kDateTimePath, '$1.select($this.toString().toDateTime())'),
  },
  {
    id: 'partial-moment', section: '4.1.7 DateTime, 5.5 toDateTime(), toString()',
    why: 'a DateTime without a time is a DateTime, and its text has no T at its end',
    rewrite: (e) => e.replace(/@(\d{4}(?:-\d\d){0,2})T(?!\d)/g, "('$1'.toDateTime())").replace(/\.toDateTime\(\)/g, '.toString().toDateTime()'),
  },
  {
    id: 'plural-of-a-calendar-word', section: '4.1.8 Quantity (both words are one unit), 5.5 toString()',
    why: 'the text of 56 year is 56 years; the reference engine keeps the word as written, which shows in the length of the text',
    rewrite: (e) => e.replace(/(\d) (year|day)\b/g, '$1 $2s'),
  },
  {
    id: 'offset-kept', section: '6.7 Date/Time Arithmetic (the official suite, testPlusDate3 to 22, says so too)',
    why: 'a moment that is moved keeps its offset; the reference engine turns it into UTC, which shows in its date and text',
    reads: (value) => typeof value === 'string' ? value.replace(/(Z|[+-]\d\d:\d\d)$/, '') : value,
    rewrite: (e) => e.replace(/(@\d{4}-\d\d-\d\dT[\d:.]+)(Z|[+-]\d\d:\d\d)/g, '$1')
        .replace(kDateTimePath, (path) => `${path}.select($this.toString().replaceMatches('(Z|[+-][0-9]{2}:[0-9]{2})$', '').toDateTime())`),
  },
  {
    id: 'equal-items-once', section: '5.2 repeat()',
    why: 'an item equal to one found before is left out; the reference engine keeps equal items of different places',
    rewrite: (e) => e.replace(/(repeat\([^()]*\))/g, '$1.distinct()'),
  },
];

module.exports = { classes, plain };
